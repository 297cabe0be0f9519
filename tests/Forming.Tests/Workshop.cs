using Forming.Checks;
using Forming.Contact;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Springback;
using Forming.Verification;

namespace Forming.Tests;

/// <summary>Sheets, panels, forms and a brake as a shop has them, for tests to vary.</summary>
internal static class Workshop
{
    public const double Degree = Math.PI / 180;

    public static MarkSpec Marks { get; } = new(Datum.Edge, new Tape(LengthUnit.Mm, 0.5));

    public static BrakeSpec Brake { get; } = new() { LengthMm = 1250 };

    public static Material Of(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new KeyNotFoundException(id);

    public static Material Perfect(double modulusMpa, double poisson, double yieldMpa) => TextbookMetal.Perfect(modulusMpa, poisson, yieldMpa);

    public static Material Uniaxial(double modulusMpa, double yieldMpa) => TextbookMetal.Uniaxial(modulusMpa, yieldMpa);

    public static Material Hardening(double modulusMpa, double poisson, double yieldMpa, double n, double strengthCoefficientMpa) =>
        TextbookMetal.Hardening(modulusMpa, poisson, yieldMpa, n, strengthCoefficientMpa);

    public static Material Swift(double modulusMpa, double poisson, double yieldMpa, double n, double prestrain) =>
        TextbookMetal.Swift(modulusMpa, poisson, yieldMpa, n, prestrain);

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

    /// <summary>A plan whose checks carry no remedies: most tests look at figures only, and a search for remedies plans many jobs.</summary>
    public static FormPlan Plan(PanelSpec panel, FormSpec? form = null, BrakeSpec? brake = null, MarkSpec? marks = null) =>
        FormPlan.Compute(new FormJob(panel, form ?? Form(), brake ?? Brake, marks ?? Marks), needsRemedy: _ => false);

    /// <summary>A plan as a caller gets it.</summary>
    public static FormPlan PlanWithRemedies(PanelSpec panel, FormSpec? form = null, BrakeSpec? brake = null, MarkSpec? marks = null) =>
        FormPlan.Compute(new FormJob(panel, form ?? Form(), brake ?? Brake, marks ?? Marks));

    public static Check CheckOf(FormPlan plan, string id) => plan.Checks.Single(check => check.Id == id);

    public static CurvedRun Traced(PanelCurve curve) => TracedCurve.Of(curve);

    /// <summary>Equal within a share of the expected value.</summary>
    public static void Near(double expected, double actual, double share) =>
        Assert.True(Math.Abs(actual - expected) <= share * Math.Abs(expected), $"expected {expected:R}, got {actual:R}, allowed a share of {share}");

    /// <summary>Equal within a tolerance of the same unit.</summary>
    public static void Within(double tolerance, double expected, double actual) =>
        Assert.True(Math.Abs(actual - expected) <= tolerance, $"expected {expected:R}, got {actual:R}, allowed {tolerance}");
}
