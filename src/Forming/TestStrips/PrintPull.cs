using Forming.Facets;
using Forming.Learning;
using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.TestStrips;

/// <summary>The ripple of a judged strip, by its own simulated pull.</summary>
internal static class PrintPull
{
    /// <summary>More like facets than this do not move the one in the middle.</summary>
    private const int MostFacets = 5;

    /// <summary>Pulls the strip.</summary>
    /// <param name="material">Its material.</param>
    /// <param name="strip">The strip.</param>
    /// <param name="leverMm">Touching fold to hand, or of a known form its last fold to the hand [mm].</param>
    /// <param name="work">What the pull may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>Null where the pull cannot be followed fold by fold, or nothing shows.</returns>
    public static Ripple? Of(Material material, PrintStrip strip, double leverMm, PullWork work, CancellationToken cancellation)
    {
        var sheet = new Sheet(material, strip.ThicknessMm);
        if (strip.Over is { } known)
            return Pulled(sheet, strip, known, facet: null, work, cancellation);
        for (var facets = MostFacets; facets >= (strip.IsFirstFacet ? 2 : 3); facets--)
        {
            var looked = strip.IsFirstFacet ? 0 : Math.Min(facets / 2, facets - 2);
            if (Like(strip, facets, looked, leverMm) is { } form && Pulled(sheet, strip, form, looked, work, cancellation) is { } ripple)
                return ripple;
        }

        return null;
    }

    // Like facets on the strip's radius, half folds at the ends; the hand is as far from the fold before the facet looked at as it was.
    private static FacetedBar? Like(PrintStrip strip, int facets, int looked, double leverMm)
    {
        var centre = strip.FormRadiusMm - FacetedBar.UsualFoldRadiusMm;
        if (!(centre > 0) || !(Facet(Math.PI / 2) > strip.FacetMm))
            return null;
        var fold = Bisection.Solve(angle => Facet(angle) - strip.FacetMm, 0, Math.PI / 2);
        double[] folds = [.. Enumerable.Range(0, facets + 1).Select(j => j == 0 || j == facets ? fold / 2 : fold)];
        var form = new StandingForm([.. Enumerable.Repeat(strip.FacetMm, facets)], folds, FacetedBar.UsualFoldRadiusMm);
        var places = FoldPlaces.Of(form, SteppingEnds.Half, wanted: null, strip.ThicknessMm);
        var hand = leverMm - (places.AlongMm[^1] - places.AlongMm[looked]);
        return hand >= strip.FacetMm && form.StraightMm(0) > 0 ? new(form, SteppingEnds.Half, hand) : null;

        double Facet(double angle) => 2 * ((centre * Math.Sin(angle / 2)) + (FacetedBar.UsualFoldRadiusMm * Math.Tan(angle / 2)));
    }

    private static Ripple? Pulled(
        Sheet sheet, PrintStrip strip, FacetedBar bar, int? facet, PullWork work, CancellationToken cancellation)
    {
        var places = FoldPlaces.Of(bar.Form, bar.Ends, wanted: null, sheet.ThicknessMm);
        var share = strip.WidthMm is { } width
            ? StripWidth.PlaneStress(width, strip.FormRadiusMm + (sheet.ThicknessMm / 2), sheet.ThicknessMm, sheet.Material.PoissonRatio)
            : 0;
        var wrapped = PanelWrap.Compute(bar.Form, BendingLaw.OfStrip(sheet, share), bar.SetupOver(places), work, cancellation);
        if (wrapped is not { End: WrapEnd.Complete, Untouched.Count: 0 })
            return null;
        var worst = facet is { } one ? wrapped.Facets[one] : wrapped.Facets.MaxBy(each => each.RippleMm)!;
        return worst.RippleMm > 0 ? new(worst.RippleMm, worst.Slope) : null;
    }
}
