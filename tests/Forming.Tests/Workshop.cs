using Forming.Contact;
using Forming.Curves;
using Forming.Facets;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests;

/// <summary>Sheets, panels, forms and a brake as a shop has them, for tests to vary.</summary>
internal static class Workshop
{
    public const double Degree = Math.PI / 180;

    /// <summary>A panel so thin that its mid surface is the curve itself [mm].</summary>
    private const double FilmMm = 1e-9;

    public static MarkSpec Marks { get; } = new(Datum.Edge, new Tape(TapeUnit.Mm, 0.5));

    public static BrakeSpec Brake { get; } = new() { LengthMm = 1250 };

    public static Material Of(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new KeyNotFoundException(id);

    /// <summary>A metal of which only the elastic constants and the yield stress are known: perfectly plastic.</summary>
    public static Material Perfect(double modulusMpa, double poisson, double yieldMpa) => new()
    {
        Id = "custom",
        Name = "test metal",
        Family = MetalFamily.Other,
        YoungsModulusMpa = modulusMpa,
        PoissonRatio = poisson,
        YieldMpa = yieldMpa,
        UltimateMpa = yieldMpa,
        DensityKgPerCubicMetre = 2700,
        MinRadiusOverThickness = 0,
    };

    /// <summary>A metal whose wide bending law has E' = E and Y' = Y: the uniaxial figures of a textbook put into plane strain.</summary>
    public static Material Uniaxial(double modulusMpa, double yieldMpa) => Perfect(modulusMpa, 0, Math.Sqrt(3) / 2 * yieldMpa);

    /// <summary>A metal with the caller's own flow curve K (eps0 + p)^n, used as given.</summary>
    public static Material Hardening(double modulusMpa, double poisson, double yieldMpa, double n, double strengthCoefficientMpa) =>
        Perfect(modulusMpa, poisson, yieldMpa) with
        {
            StrainHardening = n,
            StrengthCoefficientMpa = strengthCoefficientMpa,
            Provenance = new Dictionary<string, Provenance> { ["strainHardening"] = new("caller", Status.Caller) },
        };

    /// <summary>The same, its curve through the yield stress at a strain of eps0.</summary>
    public static Material Swift(double modulusMpa, double poisson, double yieldMpa, double n, double prestrain) =>
        Hardening(modulusMpa, poisson, yieldMpa, n, yieldMpa / Math.Pow(prestrain, n));

    public static PanelSpec Panel(PanelCurve curve) => new()
    {
        Sheet = new(Of("al-3003-h14"), 1.5),
        Curve = curve,
        WidthMm = 300,
        LeadInMm = 80,
        LeadOutMm = 150,
        Finish = Finish.Satin,
        Springback = new PureBending(),
    };

    public static FormSpec Form(Stepping? stepping = null) => new()
    {
        Sheet = new(Of("steel-cr-cs"), 2),
        FoldRadiusMm = 2,
        LeadInMm = 60,
        LeadOutMm = 60,
        WidthMm = 300,
        Stepping = stepping ?? new(),
    };

    public static PanelCurve Arc(double radiusMm, double sweepDegrees) => new ArcCurve(radiusMm, Angle.FromDegrees(sweepDegrees));

    public static PanelCurve Progressive(double? startMm, double? endMm, double sweepDegrees, ProgressiveLaw law) =>
        new ProgressiveCurve(startMm, endMm, Angle.FromDegrees(sweepDegrees), law);

    public static FormPlan Plan(PanelSpec panel, FormSpec? form = null, BrakeSpec? brake = null, MarkSpec? marks = null) =>
        FormPlan.Compute(panel, form ?? Form(), brake ?? Brake, marks ?? Marks);

    public static Check CheckOf(FormPlan plan, string id) => plan.Checks.Single(check => check.Id == id);

    /// <summary>The finished curve itself: a sheet without thickness to speak of, which does not spring back.</summary>
    public static CurvedRun Traced(PanelCurve curve)
    {
        var law = BendingLaw.Of(new Sheet(Perfect(70e3, 0.33, 100), FilmMm));
        return ContactCurve.Solve(FinishedCurve.On(curve, Surface.Mid, FilmMm), new(law, MeasuredFactor: 1), FilmMm).Runs[0];
    }

    /// <summary>Equal within a share of the expected value.</summary>
    public static void Near(double expected, double actual, double share) =>
        Assert.True(Math.Abs(actual - expected) <= share * Math.Abs(expected), $"expected {expected:R}, got {actual:R}, allowed a share of {share}");

    /// <summary>Equal within a tolerance of the same unit.</summary>
    public static void Within(double tolerance, double expected, double actual) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance, $"expected {expected:R}, got {actual:R}, allowed {tolerance}");
}
