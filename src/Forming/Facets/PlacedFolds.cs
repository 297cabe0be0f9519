using Forming.Contact;
using Forming.Folds;
using Forming.Results;

namespace Forming.Facets;

/// <summary>The folds of the whole form, over every curved stretch and the flats between.</summary>
/// <param name="Polygon">The folds and facets.</param>
/// <param name="LastOfStretch">[stretches] index of the last fold of each curved stretch.</param>
/// <param name="FixedStepOver">Sweep past the wanted one with a fixed angle or spacing [rad]; negative is short.</param>
public sealed record PlacedFolds(FormPolygon Polygon, IReadOnlyList<int> LastOfStretch, double FixedStepOver)
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

    /// <summary>Widest facet on a curved stretch [mm]; 0 where single folds leave none.</summary>
    public double WidestFacetMm
    {
        get
        {
            var widest = 0.0;
            for (var j = 0; j < Polygon.Facets.Length; j++)
            {
                if (!IsFlatAfter(j))
                    widest = Math.Max(widest, Polygon.Facets[j]);
            }

            return widest;
        }
    }

    /// <summary>Whether a whole curved stretch has one fold only: it leaves nothing for the panel to wrap over.</summary>
    public bool HasSingleFold
    {
        get
        {
            var before = -1;
            foreach (var last in LastOfStretch)
            {
                if (last == before + 1)
                    return true;
                before = last;
            }

            return false;
        }
    }

    /// <summary>
    /// Whether a brake can fold it, and a panel wrap over it: facets within their limits on every curved stretch, and no fold past
    /// <see cref="StepSearch.MostChosenAngle"/>.
    /// </summary>
    /// <param name="leastMm">Narrowest facet the brake can fold [mm].</param>
    /// <param name="mostMm">Widest facet that is wanted [mm], or null.</param>
    public bool IsFoldable(double leastMm, double? mostMm)
    {
        if (HasSingleFold)
            return false;
        for (var j = 0; j < Polygon.Facets.Length; j++)
        {
            if (!IsFlatAfter(j) && !(Polygon.Facets[j] >= leastMm && Polygon.Facets[j] <= (mostMm ?? double.PositiveInfinity)))
                return false;
        }

        return Polygon.Angles.Max() <= StepSearch.MostChosenAngle;
    }

    /// <summary>The same with one angle for all folds of a stretch but its end folds: one setting of the stop.</summary>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="fixedAngle">The angle [rad]; null for the one they have on average.</param>
    public PlacedFolds WithEvenAngles(FoldShape fold, double? fixedAngle)
    {
        var angles = (double[])Polygon.Angles.Clone();
        var first = 0;
        foreach (var last in LastOfStretch)
        {
            if (last - first > (fixedAngle is null ? 2 : 1))
            {
                var inner = angles.AsSpan((first + 1)..last);
                var average = inner.ToArray().Average();
                inner.Fill(fixedAngle ?? average);
                // The end folds share what the others give or take.
                var left = (average - inner[0]) * inner.Length / 2;
                (angles[first], angles[last]) = (angles[first] + left, angles[last] + left);
            }

            first = last + 1;
        }

        return this with { Polygon = Polygon.WithAngles(angles, fold) };
    }

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
    public static PlacedFolds Solve(
        ContactCurve curve,
        Stepping stepping,
        FoldShape fold,
        FacetJudge judge,
        double minFacetMm,
        double markResolutionMm,
        CancellationToken cancellation = default)
    {
        FoldsFit(curve, fold);
        var stretches = curve.Runs.Select(PlacementsOn).ToArray();
        if ((stepping.FoldAngle?.Radians ?? stepping.SpacingMm) is { } step)
        {
            var stepped = FixedStep(stretches, step, stepping.Folds);
            var endTurn = stepped.EndTurn + (curve.Sweep.Radians - curve.Runs[^1].End.Turn);
            return Joined([stepped], curve, fold, endTurn, endTurn - curve.Sweep.Radians);
        }

        var parts = stepping.Folds is { } folds ? FixedCount(stretches, stepping.Ends, folds) : Free(stretches, cancellation);
        return Joined(parts, curve, fold, curve.Sweep.Radians, 0);

        FoldPlacement[] PlacementsOn(CurvedRun run) => Array.ConvertAll(RulesFor(stepping.Rule), rule => new FoldPlacement(
            stepping with { Rule = rule },
            run,
            fold,
            judge,
            FoldDensity.Of(rule, run, fold, curve.ThicknessMm, judge, stepping.Ends),
            minFacetMm,
            markResolutionMm,
            cancellation));
    }

    // Now and then one of the even rules needs a fold less than the density by allowed facet does.
    /// <summary>The rules by which a rule may place its folds, the first that does winning.</summary>
    /// <param name="rule">The rule asked for.</param>
    internal static SteppingRule[] RulesFor(SteppingRule rule) => rule == SteppingRule.FewestFolds
        ? [SteppingRule.FewestFolds, SteppingRule.EqualAngle, SteppingRule.EqualSpacing]
        : [rule];

    private static void FoldsFit(ContactCurve curve, FoldShape fold)
    {
        var tightest = curve.Extremes.Min(place => place.RadiusMm(curve.ThicknessMm));
        if (tightest > fold.OuterRadiusMm)
            return;
        throw new NoSolutionException(
            "form.fold-radius-too-large",
            "form.foldRadius",
            $"{Figure.Length(tightest)} is sharper than a fold of this form ({Figure.Length(fold.OuterRadiusMm)} outside): bend the panel directly in the brake, or fold the form sharper",
            tightest > fold.ThicknessMm
                ? $"a fold radius below {Figure.Length(tightest - fold.ThicknessMm)}, or a thinner form"
                : (FormattableString)$"a form thinner than {Figure.Length(tightest)} with a smaller fold radius");
    }

    private static FormPolygon FixedStep(FoldPlacement[][] stretches, double step, int? folds) => stretches.Length == 1
        ? stretches[0][0].WithStep(step, folds)
        : throw new NoSolutionException(
            "stepping.fixed-step-needs-one-stretch",
            "form.stepping",
            $"a fixed angle or spacing serves one curved stretch; this curve has {stretches.Length} with flats between",
            $"a fixed number of folds, or none fixed");

    private static FormPolygon[] Free(FoldPlacement[][] stretches, CancellationToken cancellation)
    {
        var parts = new FormPolygon[stretches.Length];
        var folds = 0;
        for (var i = 0; i < parts.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            parts[i] = Free(stretches[i]) ?? throw StepSearch.TooMany();
            folds += parts[i].Angles.Length;
            if (folds > StepSearch.MostFolds)
                throw StepSearch.TooManyInAll();
        }

        return parts;
    }

    // A stretch placed by whichever rule is smooth with the fewest folds.
    private static FormPolygon? Free(FoldPlacement[] rules)
    {
        FormPolygon? best = null;
        var isBestSmooth = false;
        foreach (var rule in rules)
        {
            if (rule.Fewest() is not { } folded)
                continue;
            var isSmooth = rules.Length == 1 || rule.IsSmooth(folded);
            if (best is not null && (isSmooth == isBestSmooth ? folded.Angles.Length >= best.Angles.Length : isBestSmooth))
                continue;
            (best, isBestSmooth) = (folded, isSmooth);
        }

        return best;
    }

    // Each stretch gets its share of the folds by what it would choose itself, the largest remainders first.
    private static FormPolygon[] FixedCount(FoldPlacement[][] stretches, SteppingEnds ends, int folds)
    {
        var extra = ends == SteppingEnds.Half ? 1 : 0;
        var steps = folds - (extra * stretches.Length);
        if (steps < stretches.Length)
        {
            var least = (1 + extra) * stretches.Length;
            throw new NoSolutionException(
                "stepping.too-few-folds",
                "form.stepping.folds",
                $"{folds} folds do not serve {stretches.Length} curved stretches with these ends",
                $"at least {least} folds");
        }

        // One rule on one stretch places a count the same way, given or chosen.
        if (stretches is [[var only]])
            return [only.WithSteps(steps)];
        var free = Array.ConvertAll(stretches, Free);
        if (stretches.Length == 1)
            return [WithSteps(stretches[0], free[0], steps, extra)];
        var wanted = Array.ConvertAll(free, part => (part ?? throw StepSearch.TooMany()).Angles.Length - extra);
        var counts = Shared(steps, wanted);
        return [.. stretches.Select((rules, i) => WithSteps(rules, free[i], counts[i], extra))];
    }

    // Where there are enough for every stretch, none gets fewer than it wants.
    private static int[] Shared(int steps, int[] wanted)
    {
        var all = wanted.Sum();
        var counts = steps >= all ? [.. wanted] : Enumerable.Repeat(1, wanted.Length).ToArray();
        var spare = steps - counts.Sum();
        var shares = Array.ConvertAll(wanted, share => (double)spare * share / all);
        for (var i = 0; i < counts.Length; i++)
            counts[i] += (int)Math.Floor(shares[i]);
        var order = Enumerable.Range(0, counts.Length).OrderByDescending(i => shares[i] - Math.Floor(shares[i]));
        foreach (var i in order.Take(steps - counts.Sum()))
            counts[i]++;
        return counts;
    }

    // As many folds as the free search chooses fall where it puts them, others by the first rule that is smooth with them.
    private static FormPolygon WithSteps(FoldPlacement[] rules, FormPolygon? free, int steps, int extra)
    {
        if (free?.Angles.Length == steps + extra)
            return free;
        var first = rules[0].WithSteps(steps);
        if (rules.Length == 1 || rules[0].IsSmooth(first))
            return first;
        foreach (var rule in rules.Skip(1))
        {
            var folded = rule.WithSteps(steps);
            if (rule.IsSmooth(folded))
                return folded;
        }

        return first;
    }

    private static PlacedFolds Joined(FormPolygon[] parts, ContactCurve curve, FoldShape fold, double endTurn, double over)
    {
        var last = new int[parts.Length];
        for (int i = 0, count = 0; i < parts.Length; i++)
        {
            count += parts[i].Places.Length;
            last[i] = count - 1;
        }

        var polygon = parts.Length == 1 && curve.Runs[0].Start.Turn == 0 && curve.Runs[0].End.Turn == endTurn
            ? parts[0]
            : FormPolygon.Through([.. parts.SelectMany(part => part.Places)], 0, endTurn, fold);
        var sharpest = polygon.Angles.Max();
        if (!(sharpest < StepSearch.MostAngle) || !(polygon.Angles.Min() > 0))
            throw StepSearch.TooSharp(sharpest);
        return new(polygon, last, over);
    }
}
