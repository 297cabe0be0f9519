using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Results;
using MathNet.Numerics.Distributions;

namespace Forming.Wrapping;

/// <summary>
/// The fewest folds over which the panel comes off as wanted and shows no facet, each count solved on the simulated pull.
/// </summary>
/// <param name="finished">The finished curve on the mid surface.</param>
/// <param name="job">What is asked.</param>
/// <param name="fold">Shape of the folds.</param>
/// <param name="whole">What this work is a part of, or null.</param>
/// <param name="cancellation">Ends the work early.</param>
internal sealed class SolvedCount(FinishedCurve finished, FormJob job, FoldShape fold, PullWork? whole, CancellationToken cancellation)
{
    /// <summary>
    /// The search goes up to this many times the closed form's count, and at least <see cref="LeastRoom"/> folds past it.
    /// </summary>
    private const int MostTimes = 2;

    private const int LeastRoom = 8;

    /// <summary>Beyond this many folds a single pull is slow to follow, and solving one takes many.</summary>
    private const int MostFolds = 120;

    private readonly PullWork _work = new(PullWork.MostOfSolving, whole);

    private readonly SortedDictionary<int, SolvedForm?> _solved = [];

    private double? _times;

    /// <summary>Counts that were solved, in order.</summary>
    public IReadOnlyList<int> Searched => [.. _solved.Keys];

    /// <summary>Solves.</summary>
    /// <param name="closed">The form by the closed form.</param>
    /// <returns>The form; null where the panel cannot be followed over any that was tried.</returns>
    public SolvedForm? Of(WrappedForm closed)
    {
        var count = closed.Folds.Polygon.Angles.Length;
        if (count > MostFolds || closed.Folds.HasSingleFold)
            return null;
        _solved[count] = Solve(closed, job.Form.Stepping);
        if (job.Form.Stepping is not { Folds: null, FoldAngle: null, SpacingMm: null })
            return _solved[count];
        var most = Math.Min(MostFolds, Math.Max(MostTimes * count, count + LeastRoom));
        var fewest = StepSearch.SmallestUpTo(most, count, folds => At(folds) is { } solved && Passes(solved));
        return fewest is { } found ? _solved[found] : _solved[count];
    }

    private SolvedForm? At(int count)
    {
        if (_solved.TryGetValue(count, out var known))
            return known;
        SolvedForm? found = null;
        foreach (var rule in PlacedFolds.RulesFor(job.Form.Stepping.Rule))
        {
            var stepping = job.Form.Stepping with { Rule = rule, Folds = count };
            if (SolveAnew(stepping) is not { } solved)
                continue;
            found ??= solved;
            if (!Passes(solved))
                continue;
            found = solved;
            break;
        }

        return _solved[count] = found;
    }

    private SolvedForm? SolveAnew(Stepping stepping)
    {
        try
        {
            return Solve(
                WrappedForm.Solve(finished, job with { Form = job.Form with { Stepping = stepping } }, fold, cancellation), stepping);
        }
        catch (NoSolutionException)
        {
            // This count folds too sharply, or serves too few stretches.
            return null;
        }
    }

    private SolvedForm? Solve(WrappedForm pure, Stepping stepping)
    {
        var start = _solved.Values.LastOrDefault(solved => solved is not null);
        var stepped = job with { Form = job.Form with { Stepping = stepping } };
        return new WrapSolver(pure, finished, stepped, fold, _work, cancellation).Solve(start);
    }

    private bool Passes(SolvedForm solved) =>
        solved.IsSolved
        && solved.Form.Folds.IsFoldable(job.Brake.MinFacetMm, job.Form.Stepping.MaxFacetMm)
        && solved.Prediction.Passes(job.Panel.Finish, TimesOf(solved))
        && FinishedTolerance.IsMet(solved.Prediction.Shape!);

    // What ripple and slope are taken times, so that they pass with the confidence asked for. How much they vary is worked out over the
    // first form solved and kept: it changes little from count to count, and costs six pulls.
    private double TimesOf(SolvedForm solved)
    {
        if (job.Form.Stepping.Confidence <= Stepping.LeastConfidence)
            return 1;
        return _times ??= WrapOutlook.SumsOf(PlannedPull.JobOf(solved.Form, job, fold), solved.Prediction, _work, cancellation) is var (sums, _)
            ? Math.Exp(sums.Showing.Shift + (Normal.InvCDF(0, 1, job.Form.Stepping.Confidence) * sums.Showing.Deviation))
            : 1;
    }
}
