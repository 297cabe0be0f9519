using Forming.Facets;
using Forming.Tapers;

namespace Forming.Plans;

/// <summary>How much of a taper's facets will show, looked at from both ends.</summary>
internal static class TaperPrintThrough
{
    public static PrintThroughResult Of(TaperWrap wrap, TaperStepping stepping, TaperFolds folds, FacetJudge near, FacetJudge far)
    {
        var finish = near.Finish;
        double widest = 0, ripple = 0, slope = 0, nearest = -1;
        var at = (Index: 0, IsFar: false);
        var isInOrder = true;
        foreach (var isFar in (bool[])[false, true])
        {
            for (var j = 0; j + 1 < folds.Angles.Length; j++)
            {
                widest = Math.Max(widest, stepping.Facet(folds, j, isFar));
                var expected = stepping.RippleOf(folds, j, isFar);
                ripple = Math.Max(ripple, expected.HeightMm);
                slope = Math.Max(slope, expected.Slope.Radians);
                var share = Math.Max(expected.HeightMm / finish.RippleMm, expected.Slope.Radians / finish.Slope.Radians);
                if (share > nearest)
                    (nearest, at) = (share, (j, isFar));
                isInOrder &= (isFar ? far : near).IsInOrder(wrap.PlaceAt(folds.Turns[j], isFar));
            }
        }

        if (PrintThroughReport.WhyUnknown(wrap.Tightest, near, isInOrder, widest) is { } why)
            return new(false, why, widest, null, null, null, null, finish);
        var allowed = stepping.AllowedFacet(folds, at.Index, at.IsFar);
        return new(
            true, null, widest, stepping.Facet(folds, at.Index, at.IsFar), double.IsFinite(allowed) ? allowed : null, ripple, new Angle(slope), finish);
    }
}
