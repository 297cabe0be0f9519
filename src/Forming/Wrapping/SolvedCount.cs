using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Results;

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

    /// <summary>The search begins at this share of the closed form's count, which mostly reads high.</summary>
    public const double GuessShare = 0.7;

    /// <summary>Beyond this many folds a single pull is slow to follow, and solving one takes many.</summary>
    public const int MostFolds = 120;

    /// <summary>A panel that springs back far comes this close, or this close for its length, with enough folds [mm].</summary>
    private const double GentleMm = 0.4;

    private const double GentleShare = 0.0025;

    /// <summary>With no more folds than these, none but end folds are left, and they do not turn the fixed step.</summary>
    private const int LeastOfFixedStep = 2;

    /// <summary>Where nothing is solved at the lever chosen, these shares of it are tried.</summary>
    private static readonly double[] OtherLevers = [1.5, 0.6];

    /// <summary>The same for a panel that springs back far: levers nearer by, longer ones first where none was solved yet.</summary>
    private static readonly double[] LongerFirst = [1.25, 1.5, 0.75, 0.6];

    /// <summary>A shorter lever lets a panel arch less over its folds.</summary>
    private static readonly double[] ShorterFirst = [0.75, 0.6, 1.25, 1.5];

    /// <summary>Springback factor below which a panel springs back far.</summary>
    private const double Springy = 0.6;

    /// <summary>Its pulls are slow to follow: at the lever chosen so much work goes into it, and so much in all.</summary>
    private const int TimesAtOwnLever = 2;

    /// <inheritdoc cref="TimesAtOwnLever"/>
    private const int TimesInAll = 4;

    private PullWork _work = new(PullWork.MostOfSolving, whole);

    private readonly SortedDictionary<int, SolvedForm?> _solved = [];

    private double _closeMm;

    private bool _isSpringy; // such a panel mostly passes over a fold or two at the beginning, whatever the count

    private readonly Dictionary<SolvedForm, double> _chances = new(ReferenceEqualityComparer.Instance);

    /// <summary>Counts that were solved, in order.</summary>
    public IReadOnlyList<int> Searched => [.. _solved.Keys];

    /// <summary>Solves.</summary>
    /// <param name="closed">The form by the closed form.</param>
    /// <returns>The form; null where the panel cannot be followed over any that was tried.</returns>
    public SolvedForm? Of(WrappedForm closed)
    {
        if (closed.Folds.Polygon.Angles.Length > MostFolds || closed.Folds.HasSingleFold || closed.SpringsBackTooFar)
            return null;
        _isSpringy = 1 / finished.TightestRadiusMm < Springy * closed.Tightest.Curvature;
        _closeMm = _isSpringy
            ? Math.Max(GentleMm, GentleShare * finished.LengthMm)
            : Math.Max(WrapSolver.EnoughMm, WrapSolver.EnoughShare * finished.LengthMm);
        var all = new PullWork((_isSpringy ? TimesInAll : 1) * PullWork.MostOfSolving, whole);
        _work = new((_isSpringy ? TimesAtOwnLever : 1) * PullWork.MostOfSolving, all);
        var own = AtOwnLever(closed);
        if (job.Panel.LeverMm is not null)
            return own;
        var best = own;
        double? before = null;
        foreach (var share in !_isSpringy ? OtherLevers : own is { IsSolved: true } ? ShorterFirst : LongerFirst)
        {
            if (all.IsSpent || (best is not null && IsEnough(best)))
                break;
            var lever = Math.Min(share * closed.Judge.LeverMm, Math.Min(job.Panel.LeadOutMm, Lever.MostMm));
            if (lever == closed.Judge.LeverMm || lever == before)
                continue;
            before = lever;
            var other = AtLever(lever, all);
            if (best is null || (other is not null && IsNearer(other, best)))
                best = other;
        }

        return best;
    }

    private bool IsEnough(SolvedForm solved) =>
        IsAsWanted(solved) && (!_isSpringy || solved.Prediction.Shape!.MissMm <= _closeMm);

    private bool IsNearer(SolvedForm other, SolvedForm than)
    {
        if (IsAsWanted(other) != IsAsWanted(than))
            return IsAsWanted(other);
        return _isSpringy && RankOf(other).CompareTo(RankOf(than)) > 0;

        (bool IsSolved, bool Passes, double Size) RankOf(SolvedForm solved) => (solved.IsSolved, Passes(solved), -solved.Size);
    }

    private SolvedForm? AtLever(double lever, PullWork all)
    {
        var pulled = job with { Panel = job.Panel with { LeverMm = lever } };
        try
        {
            return new SolvedCount(finished, pulled, fold, all, cancellation).Of(WrappedForm.Solve(finished, pulled, fold, cancellation));
        }
        catch (NoSolutionException)
        {
            return null;
        }
    }

    private SolvedForm? AtOwnLever(WrappedForm closed)
    {
        var count = closed.Folds.Polygon.Angles.Length;
        if (job.Form.Stepping.Folds is not null)
            return _solved[count] = Solve(closed, job.Form.Stepping);
        if (job.Form.Stepping is not { FoldAngle: null, SpacingMm: null })
            return AtFixedStep(closed);
        var most = Math.Min(MostFolds, Math.Max(MostTimes * count, count + LeastRoom));
        var fewest = StepSearch.SmallestUpTo(most, Math.Ceiling(GuessShare * count), folds => At(folds) is { } solved && IsClose(solved));
        if (fewest is not { } found)
            return NearestOf(IsFoldable);
        return _solved[found] is { Prediction.LandsInOrder: false }
            ? _solved.Values.FirstOrDefault(IsAsWantedInOrder) ?? _solved[found]
            : _solved[found];
    }

    // The form turns further or less far than by pure bending, so a step more or fewer may fit better.
    private SolvedForm? AtFixedStep(WrappedForm closed)
    {
        var count = closed.Folds.Polygon.Angles.Length;
        foreach (var folds in (int[])[count, count - 1, count + 1])
        {
            var stepping = job.Form.Stepping with { Folds = folds };
            _solved[folds] = folds == count ? Solve(closed, stepping) : folds > LeastOfFixedStep ? SolveAnew(stepping) : null;
            if (_solved[folds] is { } solved && IsAsWanted(solved))
                break;
        }

        return NearestOf(_ => true);
    }

    // No count comes close: the fewest folds that are within the tolerance, else what comes nearest to it.
    private SolvedForm? NearestOf(Func<SolvedForm, bool> isAllowed)
    {
        var solved = _solved.Values.OfType<SolvedForm>().Where(isAllowed).ToArray();
        return Array.Find(solved, form => IsAsWanted(form) && Passes(form)) ?? solved
            .OrderByDescending(form => form.Prediction.LandsInOrder)
            .ThenByDescending(form => form.IsSolved)
            .ThenByDescending(form => form.Prediction.Shape!.Meets(job.Panel.Tolerance))
            .ThenByDescending(form => form.Prediction.Passes(job.Panel.Finish))
            .ThenBy(form => form.Size)
            .FirstOrDefault();
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
            if (!IsClose(solved))
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

    private bool IsAsWanted(SolvedForm solved) =>
        solved.IsSolved && (_isSpringy || solved.Prediction.LandsInOrder) && solved.Prediction.Shape!.Meets(job.Panel.Tolerance);

    private bool IsAsWantedInOrder(SolvedForm? solved) =>
        solved is { Prediction.LandsInOrder: true } && IsAsWanted(solved) && IsFoldable(solved);

    private bool IsFoldable(SolvedForm solved) => solved.Form.Folds.IsFoldable(job.Brake.MinFacetMm, job.Form.Stepping.MaxFacetMm);

    private bool Passes(SolvedForm solved) =>
        IsFoldable(solved) && solved.Prediction.Passes(job.Panel.Finish)
        && (job.Form.Stepping.Confidence <= Stepping.LeastConfidence || ChanceOf(solved) >= job.Form.Stepping.Confidence);

    private bool IsClose(SolvedForm solved) =>
        IsAsWanted(solved) && Passes(solved) && solved.Prediction.Shape!.MissMm <= _closeMm;

    // How likely no facet shows: each count has its own, as the folds' errors count for more the less a facet shows. Six pulls a count.
    private double ChanceOf(SolvedForm solved)
    {
        if (!_chances.TryGetValue(solved, out var chance))
        {
            var pulled = PlannedPull.JobOf(solved.Form, job, fold);
            chance = WrapOutlook.SumsOf(pulled, solved.Prediction, _work, cancellation)?.Sums.ChanceOfFacets ?? 0;
            _chances[solved] = chance;
        }

        return chance;
    }
}
