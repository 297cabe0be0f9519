using Forming.Contact;
using Forming.Layout;
using Forming.Results;

namespace Forming.Facets;

/// <summary>The folds of the whole form, over every curved stretch and the flats between.</summary>
/// <param name="Polygon">The folds and facets.</param>
/// <param name="LastOfStretch">[stretches] index of the last fold of each curved stretch.</param>
/// <param name="FixedStepOver">Sweep past the wanted one with a fixed angle or spacing [rad]; negative is short.</param>
public sealed record FoldPlan(FormPolygon Polygon, IReadOnlyList<int> LastOfStretch, double FixedStepOver)
{
    /// <summary>Whether the facet after a fold is a flat of the curve, which the panel follows without bulging.</summary>
    /// <param name="index">Index of the fold before it.</param>
    public bool IsFlatAfter(int index)
    {
        for (var i = 0; i < LastOfStretch.Count; i++)
        {
            if (LastOfStretch[i] == index)
                return true;
        }

        return false;
    }

    /// <summary>Whether the facet after a fold is the first of its stretch.</summary>
    /// <param name="index">Index of the fold before it.</param>
    public bool IsFirstOfStretch(int index) => index == 0 || IsFlatAfter(index - 1);

    /// <summary>Puts the folds on a contact curve.</summary>
    /// <param name="curve">The contact curve.</param>
    /// <param name="stepping">The rule and what the caller fixed.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="judge">Tells whether a facet would show.</param>
    /// <param name="minFacetMm">Narrowest facet the brake can fold [mm].</param>
    /// <param name="markResolutionMm">Smallest step of the marks [mm].</param>
    /// <param name="cancellation">Ends the search early.</param>
    /// <exception cref="NoSolutionException">
    /// <c>form.fold-radius-too-large</c>: the folds' outside radius exceeds the contact curve's; <c>stepping.too-many-folds</c>;
    /// <c>stepping.too-few-folds</c>; <c>stepping.fixed-step-needs-one-stretch</c>; <c>stepping.fold-too-sharp</c>.
    /// </exception>
    public static FoldPlan Solve(
        ContactCurve curve,
        Stepping stepping,
        FoldShape fold,
        FacetJudge judge,
        double minFacetMm,
        double markResolutionMm,
        CancellationToken cancellation = default)
    {
        FoldsFit(curve, fold);
        var placements = curve.Runs.Select(run => PlacementOn(run, stepping)).ToArray();
        if ((stepping.FoldAngle?.Radians ?? stepping.SpacingMm) is { } step)
        {
            var stepped = FixedStep(placements, step);
            var over = stepped.EndTurn - curve.Sweep.Radians;
            return Joined([stepped], curve, fold, stepped.EndTurn, over);
        }

        var parts = stepping.Folds is { } folds ? FixedCount(placements, stepping.Ends, folds) : Smooth(curve, stepping, PlacementOn, cancellation);
        return Joined(parts, curve, fold, curve.Sweep.Radians, 0);

        FoldPlacement PlacementOn(CurvedRun run, Stepping by) => new(
            by, run, fold, judge, FoldDensity.Of(by.Rule, run, fold, curve.ThicknessMm, judge, by.Ends), minFacetMm, markResolutionMm, cancellation);
    }

    private static void FoldsFit(ContactCurve curve, FoldShape fold)
    {
        var tightest = curve.Extremes.Min(place => place.RadiusMm(curve.ThicknessMm));
        if (tightest > fold.OuterRadiusMm)
            return;
        throw new NoSolutionException(
            "form.fold-radius-too-large",
            "form.foldRadius",
            $"the panel must wrap down to a radius of {Figure.Length(tightest)}, but a fold's own outside radius is {Figure.Length(fold.OuterRadiusMm)}",
            tightest > fold.ThicknessMm
                ? $"a fold radius below {Figure.Length(tightest - fold.ThicknessMm)}, or a thinner form"
                : (FormattableString)$"a form thinner than {Figure.Length(tightest)} with a smaller fold radius");
    }

    private static FormPolygon FixedStep(FoldPlacement[] placements, double step) => placements.Length == 1
        ? placements[0].WithStep(step)
        : throw new NoSolutionException(
            "stepping.fixed-step-needs-one-stretch",
            "form.stepping",
            $"a fixed angle or spacing serves one curved stretch; this curve has {placements.Length} with flats between",
            $"a fixed number of folds, or none fixed");

    // Now and then one of the even rules needs a fold less than the density by allowed facet does.
    private static FormPolygon[] Smooth(
        ContactCurve curve, Stepping stepping, Func<CurvedRun, Stepping, FoldPlacement> placementOn, CancellationToken cancellation)
    {
        SteppingRule[] rules = stepping.Rule == SteppingRule.FewestFolds
            ? [SteppingRule.FewestFolds, SteppingRule.EqualAngle, SteppingRule.EqualSpacing]
            : [stepping.Rule];
        var parts = new FormPolygon[curve.Runs.Count];
        var folds = 0;
        for (var i = 0; i < parts.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            parts[i] = rules.Select(rule => placementOn(curve.Runs[i], stepping with { Rule = rule }).Fewest())
                .MinBy(polygon => polygon.Angles.Length)!;
            folds += parts[i].Angles.Length;
            if (folds > StepSearch.MostFolds)
                throw StepSearch.TooManyInAll();
        }

        return parts;
    }

    // Each stretch gets its share of the folds by what the finish would ask for, the largest remainders first.
    private static FormPolygon[] FixedCount(FoldPlacement[] placements, SteppingEnds ends, int folds)
    {
        var extra = ends == SteppingEnds.Half ? 1 : 0;
        var steps = folds - (extra * placements.Length);
        if (steps < placements.Length)
        {
            var least = (1 + extra) * placements.Length;
            throw new NoSolutionException(
                "stepping.too-few-folds",
                "form.stepping.folds",
                $"{folds} folds do not serve {placements.Length} curved stretches with these ends",
                $"at least {least} folds");
        }

        if (placements.Length == 1)
            return [placements[0].WithSteps(steps)];
        var wanted = placements.Select(placement => (double)placement.StepsWanted()).ToArray();
        var spare = steps - placements.Length;
        var shares = wanted.Select(share => spare * share / wanted.Sum()).ToArray();
        var counts = shares.Select(share => 1 + (int)Math.Floor(share)).ToArray();
        var order = Enumerable.Range(0, counts.Length).OrderByDescending(i => shares[i] - Math.Floor(shares[i]));
        foreach (var i in order.Take(steps - counts.Sum()))
            counts[i]++;
        return [.. placements.Select((placement, i) => placement.WithSteps(counts[i]))];
    }

    private static FoldPlan Joined(FormPolygon[] parts, ContactCurve curve, FoldShape fold, double endTurn, double over)
    {
        var last = new int[parts.Length];
        for (int i = 0, count = 0; i < parts.Length; i++)
        {
            count += parts[i].Places.Length;
            last[i] = count - 1;
        }

        var polygon = parts.Length == 1 && curve.Runs[0].Start.Turn == 0
            ? parts[0]
            : FormPolygon.Through([.. parts.SelectMany(part => part.Places)], 0, endTurn, fold);
        var sharpest = polygon.Angles.Max();
        if (!(sharpest < StepSearch.MostAngle) || !(polygon.Angles.Min() > 0))
            throw StepSearch.TooSharp(sharpest);
        return new(polygon, last, over);
    }
}
