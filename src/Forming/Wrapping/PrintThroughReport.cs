using Forming.Contact;
using Forming.Facets;
using Forming.Springback;

namespace Forming.Wrapping;

/// <summary>How much of the chosen facets will show.</summary>
internal static class PrintThroughReport
{
    /// <summary>Looks at every facet on a curved stretch; flats of the curve are followed without bulging.</summary>
    /// <param name="wrapped">The folds and the panel around them.</param>
    public static PrintThroughResult Of(WrappedForm wrapped) =>
        Of(FacetsOf(wrapped), wrapped.Tightest, wrapped.Judge, wrapped.LongestLeverMm, wrapped.Folds.HasSingleFold);

    /// <summary>Looks at facets one by one and reports the one nearest to its limit.</summary>
    /// <param name="facets">The facets, each with the panel over it.</param>
    /// <param name="tightest">The panel's state where it is bent the most.</param>
    /// <param name="judge">Law, lever and finish.</param>
    /// <param name="longestLever">Longest lever that keeps the wrap in order [mm].</param>
    /// <param name="hasSingleFold">Whether a curved stretch has one fold only.</param>
    public static PrintThroughResult Of(
        IEnumerable<FacetUnderPanel> facets, BentState tightest, FacetJudge judge, double longestLever, bool hasSingleFold)
    {
        var finish = judge.Finish;
        double widest = 0, nearestShare = -1;
        (FacetUnderPanel Facet, Ripple Ripple) nearest = default;
        foreach (var facet in facets)
        {
            widest = Math.Max(widest, facet.WidthMm);
            var expected = facet.Judge.RippleOf(facet.WidthMm, facet.From, facet.Tightest, facet.IsFirst);
            var share = Math.Max(expected.HeightMm / finish.RippleMm, expected.Slope.Radians / finish.Slope.Radians);
            if (share > nearestShare)
                (nearestShare, nearest) = (share, (facet, expected));
        }

        if (WhyUnknown(tightest, judge, longestLever, widest, hasSingleFold) is { } why)
            return PrintThroughResult.Unknown(why, widest, finish);

        var (shown, ripple) = nearest;
        var allowed = shown.Judge.AllowedFacet(shown.From, shown.Tightest, shown.IsFirst);
        return new(
            Known: true,
            WhyUnknown: null,
            WidestFacetMm: widest,
            NearestFacetMm: shown.WidthMm,
            AllowedFacetMm: double.IsFinite(allowed) ? allowed : null,
            RippleMm: ripple.HeightMm,
            Slope: ripple.Slope,
            Allowed: finish);
    }

    private static IEnumerable<FacetUnderPanel> FacetsOf(WrappedForm wrapped)
    {
        var (judge, folds) = (wrapped.Judge, wrapped.Folds);
        var polygon = folds.Polygon;
        var first = 0;
        for (var i = 0; i < folds.LastOfStretch.Count; i++)
        {
            for (var j = first; j < folds.LastOfStretch[i]; j++)
            {
                var tightest = wrapped.Contact.Runs[i].TightestBetween(polygon.Places[j], polygon.Places[j + 1]);
                yield return new(judge, polygon.Facets[j], polygon.Places[j], tightest, j == first);
            }

            first = folds.LastOfStretch[i] + 1;
        }
    }

    /// <summary>Why print-through is not known, or null.</summary>
    /// <param name="tightest">The panel's state where it is bent the most.</param>
    /// <param name="judge">Law and lever.</param>
    /// <param name="longestLever">Longest lever that keeps the wrap in order [mm].</param>
    /// <param name="widest">Widest facet [mm].</param>
    /// <param name="hasSingleFold">Whether a curved stretch has one fold only.</param>
    private static string? WhyUnknown(BentState tightest, FacetJudge judge, double longestLever, double widest, bool hasSingleFold)
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

/// <summary>A facet, and the panel pulled over it.</summary>
/// <param name="Judge">Tells whether it would show.</param>
/// <param name="WidthMm">Its width [mm].</param>
/// <param name="From">The fold before it.</param>
/// <param name="Tightest">The panel's state where it is bent the most over it.</param>
/// <param name="IsFirst">Whether it is the first of its curved stretch.</param>
internal readonly record struct FacetUnderPanel(FacetJudge Judge, double WidthMm, ContactPoint From, BentState Tightest, bool IsFirst);
