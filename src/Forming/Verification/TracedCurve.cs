using Forming.Contact;
using Forming.Curves;
using Forming.Materials;
using Forming.Springback;

namespace Forming.Verification;

/// <summary>A finished curve by itself.</summary>
internal static class TracedCurve
{
    /// <summary>A panel so thin that its mid surface is the curve itself [mm].</summary>
    public const double FilmMm = 1e-9;

    /// <summary>The curve as a sheet without thickness to speak of, which does not spring back.</summary>
    /// <param name="curve">The curve.</param>
    public static CurvedRun Of(PanelCurve curve)
    {
        var law = BendingLaw.Of(new Sheet(TextbookMetal.Perfect(70e3, 0.33, 100), FilmMm));
        return ContactCurve.Solve(FinishedCurve.On(curve, Surface.Mid, FilmMm), new(law, MeasuredFactor: 1), FilmMm).Runs[0];
    }
}
