using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Benchmarks;

/// <summary>Forms for the predictions to be timed on.</summary>
internal static class PredictionForms
{
    /// <summary>Stainless sheet of 1 mm.</summary>
    public static BendingLaw Law { get; } =
        BendingLaw.Of(new Sheet(MaterialCatalog.Default.TryFind("ss-304", out var steel) ? steel : throw new KeyNotFoundException("ss-304"), 1));

    /// <summary>Equal facets, the first fold half as much as the others.</summary>
    /// <param name="facets">How many.</param>
    /// <param name="foldDegrees">Fold angle [°].</param>
    /// <param name="facetMm">Facet [mm].</param>
    public static StandingForm Even(int facets, double foldDegrees, double facetMm)
    {
        var fold = foldDegrees * Math.PI / 180;
        return new([.. Enumerable.Repeat(facetMm, facets)], [fold / 2, .. Enumerable.Repeat(fold, facets)], 3);
    }
}
