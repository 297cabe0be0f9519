using Forming.Facets;
using Forming.Springback;

namespace Forming.Wrapping;

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
        var nearest = new NearestFacet(finish);
        var first = 0;
        for (var i = 0; i < folds.LastOfStretch.Count; i++)
        {
            for (var j = first; j < folds.LastOfStretch[i]; j++)
            {
                var tightest = wrapped.Contact.Runs[i].TightestBetween(polygon.Places[j], polygon.Places[j + 1]);
                nearest.Look(judge, polygon.Facets[j], polygon.Places[j], tightest, j == first);
            }

            first = folds.LastOfStretch[i] + 1;
        }

        return WhyUnknown(wrapped.Tightest, judge, wrapped.LongestLeverMm, nearest.WidestMm, folds.HasSingleFold) is { } why
            ? nearest.Unknown(why)
            : nearest.Known();
    }

    /// <summary>Why print-through cannot be told, or null.</summary>
    /// <param name="tightest">The panel's state where it is bent the most.</param>
    /// <param name="judge">Law and lever.</param>
    /// <param name="longestLever">Longest lever that keeps the wrap in order [mm].</param>
    /// <param name="widest">Widest facet [mm].</param>
    /// <param name="hasSingleFold">Whether a curved stretch has one fold only.</param>
    public static string? WhyUnknown(BentState tightest, FacetJudge judge, double longestLever, double widest, bool hasSingleFold)
    {
        if (hasSingleFold)
            return "a single fold in a curved stretch leaves no facet for the panel to wrap over";
        if (tightest.IsPlastic && !judge.Law.Flow.IsKnown)
            return "the sheet's hardening is not known: give elongation, or strengthCoefficient and strainHardening";
        if (judge.LeverMm > longestLever)
            return "the lever is past the longest that keeps the wrap in order";
        if (!judge.CanPullDown(widest))
            return "the lead-out is too short for a lever of one facet";
        return judge.ReachesPast(widest) ? null : "the lever is shorter than half a facet and the slide of the panel under the hand";
    }
}
