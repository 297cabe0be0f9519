using Forming.Layout;

namespace Forming.Inspection;

/// <summary>The fewest corrections in whole steps of the stop that bring a form within tolerance.</summary>
/// <remarks>
/// Depth-first from the datum, deepening the number of corrected folds: a mold line depends on the folds before it only, so the first
/// one out of tolerance ends a branch. Exact geometry of sharp mold lines; the first depth that works is proven fewest.
/// </remarks>
public static class CorrectionSearch
{
    /// <summary>Most corrected folds that are tried.</summary>
    public const int MostFolds = 4;

    /// <summary>Most places that are looked at.</summary>
    public const int NodeLimit = 3_000_000;

    // A tolerance is met up to the rounding of sums over many flats.
    internal const double Slack = 1e-9;

    /// <summary>Searches.</summary>
    /// <param name="built">The form as it was measured.</param>
    /// <param name="planned">The form as it should be, with as many folds.</param>
    /// <param name="rules">How folds may be corrected.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static CorrectionPlan Find(
        FoldedPolygon built, FoldedPolygon planned, CorrectionRules rules, CancellationToken cancellation = default) =>
        Find(built, planned, rules, NodeLimit, cancellation);

    /// <summary>Searches where folds are not parallel: both ends of every mold line count.</summary>
    /// <param name="built">The form as it was measured.</param>
    /// <param name="planned">The form as it should be, with as many folds.</param>
    /// <param name="rules">How folds may be corrected.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static CorrectionPlan Find(
        HingedForm built, HingedForm planned, CorrectionRules rules, CancellationToken cancellation = default) =>
        CorrectionSearch<SpaceMotion, HingedChain>.Find(new(built, planned, rules), rules, NodeLimit, cancellation);

    internal static CorrectionPlan Find(
        FoldedPolygon built, FoldedPolygon planned, CorrectionRules rules, int nodeLimit, CancellationToken cancellation) =>
        CorrectionSearch<ParallelChain.Place, ParallelChain>.Find(new(built, planned, rules), rules, nodeLimit, cancellation);
}

/// <summary>One search.</summary>
/// <typeparam name="TState">Where the flat that leads to the next fold lies.</typeparam>
/// <typeparam name="TChain">The form, fold by fold.</typeparam>
internal sealed class CorrectionSearch<TState, TChain>
    where TState : struct
    where TChain : IFoldChain<TState>
{
    private const int NodesBetweenLooks = 4096;

    private readonly TChain _form;
    private readonly CorrectionRules _rules;
    private readonly CancellationToken _cancellation;
    private readonly FoldCorrection[] _chosen = new FoldCorrection[CorrectionSearch.MostFolds];
    private readonly int _nodeLimit;
    private int _nodes;
    private (FoldCorrection[] Folds, int Steps, double Miss, double Closing)? _best;

    private CorrectionSearch(TChain form, CorrectionRules rules, int nodeLimit, CancellationToken cancellation)
    {
        _form = form;
        _rules = rules;
        _nodeLimit = nodeLimit;
        _cancellation = cancellation;
    }

    private bool IsSpent => _nodes >= _nodeLimit;

    /// <summary>Searches.</summary>
    /// <param name="form">The form.</param>
    /// <param name="rules">How folds may be corrected.</param>
    /// <param name="nodeLimit">Most places that are looked at.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static CorrectionPlan Find(TChain form, CorrectionRules rules, int nodeLimit, CancellationToken cancellation)
    {
        var search = new CorrectionSearch<TState, TChain>(form, rules, nodeLimit, cancellation);
        var depth = 0;
        while (depth <= Math.Min(CorrectionSearch.MostFolds, form.Folds))
        {
            search.Visit(0, form.Start, depth, 0, 0);
            if (search._best is not null || search.IsSpent)
                break;
            depth++;
        }

        return search._best is { } best
            ? new()
            {
                Found = true,
                Folds = best.Folds,
                LowerBound = depth,
                IsGentlest = !search.IsSpent,
                HitLimit = search.IsSpent,
                Nodes = search._nodes,
                Closing = new(best.Closing),
                MissMm = best.Miss,
            }
            : new() { Found = false, Folds = [], LowerBound = depth, IsGentlest = false, HitLimit = search.IsSpent, Nodes = search._nodes };
    }

    // `count` folds before the next one were corrected, `left` are still to be.
    private void Visit(int fold, TState state, int left, int count, double miss)
    {
        // Folds that stay as they are do not change where it can close.
        var canClose = _form.CanClose(fold, state, left);
        while (true)
        {
            if (IsSpent)
                return;
            if (++_nodes % NodesBetweenLooks == 0)
                _cancellation.ThrowIfCancellationRequested();
            if (!canClose)
                return;
            if (fold == _form.Folds)
            {
                if (left == 0)
                    Offer(_form.ClosingFrom(fold, state), miss, count);
                return;
            }

            if (_form.Folds - fold < left)
                return;
            miss = Math.Max(miss, _form.MissAt(fold, ref state));
            if (miss > _rules.VertexMm + CorrectionSearch.Slack)
                return;
            if (left > 0)
            {
                for (var k = _rules.LeastSteps; k <= _rules.MostSteps; k++)
                {
                    if (k == 0 || _form.AngleOf(fold) + (k * _rules.Step.Radians) < 0)
                        continue;
                    _chosen[count] = new(fold, k);
                    Visit(fold + 1, _form.Made(fold, state, k), left - 1, count + 1, miss);
                }
            }

            state = _form.Made(fold, state, 0);
            fold++;
        }
    }

    private void Offer(double closing, double miss, int count)
    {
        var sum = 0;
        for (var i = 0; i < count; i++)
            sum += Math.Abs(_chosen[i].Steps);
        if (_best is { } before && (sum > before.Steps || (sum == before.Steps && miss >= before.Miss)))
            return;
        _best = (_chosen[..count], sum, miss, closing);
    }
}
