using Forming.Facets;

namespace Forming.Plans;

/// <summary>How much of the chosen facets will show.</summary>
internal static class PrintThroughReport
{
    /// <summary>Looks at every facet on a curved stretch; flats of the curve are followed without bulging.</summary>
    /// <param name="wrapped">The folds and the panel around them.</param>
    /// <param name="finish">The limits.</param>
    public static PrintThroughResult Of(WrappedForm wrapped, Finish finish)
    {
        var (judge, folds) = (wrapped.Judge, wrapped.Folds);
        var polygon = folds.Polygon;
        double widest = 0, ripple = 0, slope = 0, allowed = double.PositiveInfinity, worst = 0;
        var isKnown = true;
        for (var j = 0; j < polygon.Facets.Length; j++)
        {
            if (folds.IsFlatAfter(j))
                continue;
            var (facet, from, to, isFirst) = (polygon.Facets[j], polygon.Places[j], polygon.Places[j + 1], folds.IsFirstOfStretch(j));
            widest = Math.Max(widest, facet);
            var expected = judge.RippleOf(facet, from, to, isFirst);
            ripple = Math.Max(ripple, expected.HeightMm);
            slope = Math.Max(slope, expected.Slope.Radians);
            var here = judge.AllowedFacet(from, to, isFirst);
            if (facet / here >= worst)
                (worst, allowed) = (facet / here, here);
            isKnown &= judge.IsInOrder(from);
        }

        var why = WhyUnknown(wrapped, isKnown, widest);
        return why is null
            ? new(true, null, widest, double.IsFinite(allowed) ? allowed : null, ripple, new(slope), finish)
            : new(false, why, widest, null, null, null, finish);
    }

    private static string? WhyUnknown(WrappedForm wrapped, bool isInOrder, double widest)
    {
        if (wrapped.Tightest.IsPlastic && !wrapped.Rule.Law.Flow.IsKnown)
            return "the sheet's hardening is not known: give elongation, or strengthCoefficient and strainHardening";
        if (!isInOrder)
            return "the lever is past the longest that keeps the wrap in order";
        return wrapped.Judge.LeverMm < widest ? "the lead-out leaves no lever of even one facet" : null;
    }
}
