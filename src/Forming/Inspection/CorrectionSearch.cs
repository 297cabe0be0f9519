using Forming.Layout;

namespace Forming.Inspection;

/// <summary>The fewest corrections in whole steps of the stop that bring a form within tolerance.</summary>
/// <remarks>
/// Depth-first from the datum, deepening the number of corrected folds: a mold line depends on the folds before it only, so the first
/// one out of tolerance ends a branch. Exact geometry of sharp mold lines; the first depth that works is proven fewest.
/// </remarks>
public sealed class CorrectionSearch
{
    /// <summary>Most corrected folds that are tried.</summary>
    public const int MostFolds = 4;

    /// <summary>Most places that are looked at.</summary>
    public const int NodeLimit = 3_000_000;

    // A tolerance is met up to the rounding of sums over many flats.
    internal const double Slack = 1e-9;

    private const int NodesBetweenLooks = 4096;

    private readonly FoldedPolygon _built;
    private readonly Point[] _wanted;
    private readonly double[] _turns;
    private readonly CorrectionRules _rules;
    private readonly CancellationToken _cancellation;
    private readonly double _closing;
    private readonly FoldCorrection[] _chosen = new FoldCorrection[MostFolds];
    private readonly int _nodeLimit;
    private int _nodes;
    private (FoldCorrection[] Folds, int Steps, double Miss, double Closing)? _best;

    private CorrectionSearch(
        FoldedPolygon built, FoldedPolygon planned, CorrectionRules rules, int nodeLimit, CancellationToken cancellation)
    {
        _built = built;
        _rules = rules;
        _nodeLimit = nodeLimit;
        _cancellation = cancellation;
        _wanted = planned.Vertices();
        _turns = new double[built.Folds + 1];
        for (var i = 0; i < built.Folds; i++)
            _turns[i + 1] = _turns[i] + built.FoldAngles[i];
        _closing = _turns[^1] - planned.Sweep;
    }

    private bool IsSpent => _nodes >= _nodeLimit;

    private int Least => _rules.Direction == CorrectionDirection.CloseOnly ? 0 : -_rules.MostSteps;

    /// <summary>Searches.</summary>
    /// <param name="built">The form as it was measured.</param>
    /// <param name="planned">The form as it should be, with as many folds.</param>
    /// <param name="rules">How folds may be corrected.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static CorrectionPlan Find(
        FoldedPolygon built, FoldedPolygon planned, CorrectionRules rules, CancellationToken cancellation = default) =>
        Find(built, planned, rules, NodeLimit, cancellation);

    internal static CorrectionPlan Find(
        FoldedPolygon built, FoldedPolygon planned, CorrectionRules rules, int nodeLimit, CancellationToken cancellation)
    {
        var search = new CorrectionSearch(built, planned, rules, nodeLimit, cancellation);
        var depth = 0;
        while (depth <= Math.Min(MostFolds, built.Folds))
        {
            search.Visit(0, default, 0, depth, 0, 0);
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

    // The flat that leads to a fold starts at `position`; `count` folds before it were corrected by `steps` steps in all, `left` are still
    // to be.
    private void Visit(int fold, Point position, int steps, int left, int count, double miss)
    {
        while (true)
        {
            if (IsSpent)
                return;
            if (++_nodes % NodesBetweenLooks == 0)
                _cancellation.ThrowIfCancellationRequested();
            if (!CanClose(steps, left))
                return;
            if (fold == _built.Folds)
            {
                if (left == 0)
                    Offer(steps, miss, count);
                return;
            }

            if (_built.Folds - fold < left)
                return;
            position += _built.FlatsMm[fold] * Point.Along(_turns[fold] + (steps * _rules.Step.Radians));
            miss = Math.Max(miss, (position - _wanted[fold + 1]).Length);
            if (miss > _rules.VertexMm + Slack)
                return;
            if (left > 0)
            {
                for (var k = Least; k <= _rules.MostSteps; k++)
                {
                    if (k == 0 || _built.FoldAngles[fold] + (k * _rules.Step.Radians) < 0)
                        continue;
                    _chosen[count] = new(fold, k);
                    Visit(fold + 1, position, steps + k, left - 1, count + 1, miss);
                }
            }

            fold++;
        }
    }

    private bool CanClose(int steps, int left)
    {
        var step = _rules.Step.Radians;
        var error = _closing + (steps * step);
        var tolerance = _rules.Closing.Radians + Slack;
        return error + (left * _rules.MostSteps * step) >= -tolerance && error + (left * Least * step) <= tolerance;
    }

    private void Offer(int steps, double miss, int count)
    {
        var sum = 0;
        for (var i = 0; i < count; i++)
            sum += Math.Abs(_chosen[i].Steps);
        if (_best is { } before && (sum > before.Steps || (sum == before.Steps && miss >= before.Miss)))
            return;
        _best = (_chosen[..count], sum, miss, _closing + (steps * _rules.Step.Radians));
    }
}
