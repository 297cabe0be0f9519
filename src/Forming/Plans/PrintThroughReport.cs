using Forming.Facets;
using Forming.Springback;

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
        double widest = 0, ripple = 0, slope = 0, nearest = -1;
        var at = 0;
        var isInOrder = true;
        for (var j = 0; j < polygon.Facets.Length; j++)
        {
            if (folds.IsFlatAfter(j))
                continue;
            widest = Math.Max(widest, polygon.Facets[j]);
            var expected = judge.RippleOf(polygon.Facets[j], polygon.Places[j], polygon.Places[j + 1], folds.IsFirstOfStretch(j));
            ripple = Math.Max(ripple, expected.HeightMm);
            slope = Math.Max(slope, expected.Slope.Radians);
            var share = Math.Max(expected.HeightMm / finish.RippleMm, expected.Slope.Radians / finish.Slope.Radians);
            if (share > nearest)
                (nearest, at) = (share, j);
            isInOrder &= judge.IsInOrder(polygon.Places[j]);
        }

        if (WhyUnknown(wrapped.Tightest, judge, isInOrder, widest) is { } why)
            return new(false, why, widest, null, null, null, null, finish);
        var allowed = judge.AllowedFacet(polygon.Places[at], polygon.Places[at + 1], folds.IsFirstOfStretch(at));
        return new(true, null, widest, polygon.Facets[at], double.IsFinite(allowed) ? allowed : null, ripple, new Angle(slope), finish);
    }

    /// <summary>Why print-through cannot be told, or null.</summary>
    /// <param name="tightest">The panel's state where it is bent the most.</param>
    /// <param name="judge">Law and lever.</param>
    /// <param name="isInOrder">Whether the lever keeps the wrap in order.</param>
    /// <param name="widest">Widest facet [mm].</param>
    public static string? WhyUnknown(BentState tightest, FacetJudge judge, bool isInOrder, double widest)
    {
        if (widest == 0)
            return "single folds leave no facets for the panel to wrap over";
        if (tightest.IsPlastic && !judge.Law.Flow.IsKnown)
            return "the sheet's hardening is not known: give elongation, or strengthCoefficient and strainHardening";
        if (!isInOrder)
            return "the lever is past the longest that keeps the wrap in order";
        return judge.LeverMm < widest ? "the lead-out leaves no lever of even one facet" : null;
    }
}
