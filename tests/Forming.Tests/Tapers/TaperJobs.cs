using CsCheck;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Tapers;

/// <summary>Jobs that the taper tests plan.</summary>
internal static class TaperJobs
{
    public const double Degree = Math.PI / 180;

    public static readonly FormSpec Form = new()
    {
        Sheet = new(Catalogue("steel-cr-cs"), 2),
        FoldRadiusMm = 2,
        LeadInMm = 60,
        LeadOutMm = 60,
        WidthMm = 600,
    };

    public static readonly MarkSpec Marks = new(Datum.Edge, new Tape(LengthUnit.Mm, 0.5));

    public static readonly Gen<TaperCurve> AnyTaper =
        from sweep in Gen.Double[30, 120]
        from near in AnyEnd(sweep)
        from far in AnyEnd(sweep)
        from length in Gen.Double[300, 900]
        from placement in Gen.Enum<TaperPlacement>()
        from x in Gen.Double[-30, 30]
        from y in Gen.Double[-30, 30]
        select new TaperCurve(near, far, length, placement, new(x, y));

    public static Material Catalogue(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material! : throw new ArgumentException(id);

    public static PanelSpec Panel(PanelCurve curve) => new()
    {
        Sheet = new(Catalogue("ss-304"), 1.2),
        Curve = curve,
        WidthMm = 600,
        LeadInMm = 80,
        LeadOutMm = 150,
        Finish = Finish.Satin,
    };

    public static FormPlan Plan(PanelCurve curve, Stepping? stepping = null, SpringbackChoice? springback = null) => FormPlan.Compute(new FormJob(
        Panel(curve) with { Springback = springback ?? new PureBending() },
        Form with { Stepping = stepping ?? new() },
        new BrakeSpec { LengthMm = 1250 },
        Marks), _ => false);

    public static TaperCurve Cone(double near, double far, double length, double degrees = 90) =>
        new(Arc(near, degrees), Arc(far, degrees), length, TaperPlacement.Concentric, default);

    public static ArcCurve Arc(double radius, double degrees) => new(radius, Angle.FromDegrees(degrees));

    public static FormPlan? TryPlan(TaperCurve taper)
    {
        try
        {
            return Plan(taper, new() { Folds = 12 }, new MeasuredFactor(0.75));
        }
        catch (NoSolutionException)
        {
            return null;
        }
    }

    private static Gen<PanelCurve> AnyEnd(double sweep) => Gen.OneOf<PanelCurve>(
        Gen.Double[60, 250].Select(radius => (PanelCurve)Arc(radius, sweep)),
        Gen.Select(Gen.Double[60, 250], Gen.Double[60, 250], Gen.Enum<ProgressiveLaw>()).Select((start, end, law) =>
            (PanelCurve)new ProgressiveCurve(start, end, Angle.FromDegrees(sweep), law)),
        Gen.Select(Gen.Double[120, 250], Gen.Double[120, 250], Gen.Double[-90, 90]).Select((x, y, from) =>
            (PanelCurve)new EllipseCurve(x, y, Angle.FromDegrees(from), Angle.FromDegrees(from + sweep))));
}
