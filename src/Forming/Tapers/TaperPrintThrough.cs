using Forming.Facets;
using Forming.Wrapping;

namespace Forming.Tapers;

/// <summary>How much of a taper's facets will show, looked at from both ends.</summary>
internal static class TaperPrintThrough
{
    public static PrintThroughResult Of(TaperWrap wrap, TaperStepping stepping, TaperFolds folds, FacetJudge near, FacetJudge far)
    {
        var nearest = new NearestFacet(near.Finish);
        foreach (var isFar in (bool[])[false, true])
        {
            for (var j = 0; j + 1 < folds.Angles.Length; j++)
            {
                var tightest = wrap.TightestBetween(folds.Turns[j], folds.Turns[j + 1], isFar);
                nearest.Look(isFar ? far : near, stepping.Facet(folds, j, isFar), wrap.PlaceAt(folds.Turns[j], isFar), tightest, j == 0);
            }
        }

        return PrintThroughReport.WhyUnknown(wrap.Tightest, near, wrap.LongestLeverMm(1), nearest.WidestMm, folds.Angles.Length == 1) is { } why
            ? nearest.Unknown(why)
            : nearest.Known();
    }
}
