using Forming.Curves;
using Forming.Estimates;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Springback;

namespace Forming.Verification;

/// <summary>
/// Whole jobs, planned and estimated by the engine as a caller's would be, against a second method and arithmetic by hand.
/// </summary>
internal static class WorkedJobChecks
{
    /// <summary>The table's values have ten digits.</summary>
    private const double Digits = 2e-8;

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read(
            "worked-jobs",
            "Whole jobs from the finished curve to the time they take",
            "{name}: panel {thickness} mm, radius {radius} mm, {sweep}°, leads {leadIn} and {leadOut} mm, trim {trim} mm, width {width} mm, lever {lever} mm; "
            + "E {panelModulus} MPa, v {panelPoisson}, yield {panelYield} MPa, K {panelK} MPa, n {panelN}; form {formThickness} mm, {folds} folds of {foldRadius} mm, K {neutralFactor}; "
            + "E {formModulus} MPa, v {formPoisson}, yield {formYield} MPa, K {formK} MPa, n {formN}; leads {formLeadIn} and {formLeadOut} mm, reach {reach} mm",
            Job),
    ];

    private static CheckValue[] Job(PrintedRow row)
    {
        var panel = PanelOf(row);
        var form = FormOf(row);
        var plan = new Lazy<FormPlan>(() => FormPlan.Compute(new FormJob(
            panel,
            form,
            new() { LengthMm = 3000, ReachMm = row["reach"] },
            new(Datum.Edge, new Tape(LengthUnit.Mm, 0.5)))));
        var estimate = new Lazy<Estimate>(() => Estimate.Of(new() { Plan = plan.Value, Panel = panel, Form = form }));
        CheckValue Figure(string column, string quantity, string unit, Func<FormPlan, double> of) =>
            row.Near(column, quantity, unit, Digits, () => of(plan.Value));
        double Limit(string check) => plan.Value.Checks.Single(one => one.Id == check).Limit!.Value;
        return
        [
            Figure("sweepUnderLoad", "sweep of the form", "°", plan => plan.Form.Sweep.Degrees),
            Figure("formedRadius", "radius of the form's contact curve", "mm", plan => plan.Form.Stations[1].RadiusMm ?? double.NaN),
            Figure("foldAngle", "fold angle", "°", plan => plan.Form.Stations[1].FoldAngle.Degrees),
            Figure("facet", "facet, mold line to mold line", "mm", plan => plan.Form.Stations[1].FacetAfterMm),
            Figure("firstMark", "place of the first fold", "mm", plan => plan.Form.Stations[0].AtMm),
            Figure("secondMark", "place of the second fold", "mm", plan => plan.Form.Stations[1].AtMm),
            Figure("formBlank", "length of the form's blank", "mm", plan => plan.Form.Blank.LengthMm),
            Figure("stopFirst", "stop angle of the half fold", "°", plan => plan.Form.Stations[0].StopAngle?.Degrees ?? double.NaN),
            Figure("stopSecond", "stop angle of a whole fold", "°", plan => plan.Form.Stations[1].StopAngle?.Degrees ?? double.NaN),
            Figure("moment", "moment per width under load", "N·mm/mm", plan => plan.Panel.Pull.MomentPerWidth),
            Figure("force", "hand force", "N", plan => plan.Panel.Pull.ForceN),
            Figure("clampLoad", "clamp load", "N", plan => plan.Panel.Pull.ClampLoadN),
            Figure("energy", "energy let go", "J", plan => plan.Panel.Pull.EnergyReleasedJ),
            Figure("longestLever", "longest lever", "mm", plan => plan.Panel.Pull.LongestLeverMm ?? double.NaN),
            Figure("ripple", "largest ripple", "mm", plan => plan.Panel.PrintThrough.RippleMm ?? double.NaN),
            Figure("rippleSlope", "largest slope of the ripple", "°", plan => plan.Panel.PrintThrough.Slope?.Degrees ?? double.NaN),
            Figure("giveRotation", "rotation of the form's end, in radians times 180/π", "°", plan => plan.Form.Give.Rotation.Radians * 180 / Math.PI),
            Figure("giveMoment", "largest moment the form carries", "N·mm/mm", plan => plan.Form.Give.MomentPerWidth),
            Figure("giveFirstYield", "moment at which the form yields", "N·mm/mm", plan => plan.Form.Give.FirstYieldPerWidth),
            Figure("panelBlank", "length of the panel's blank", "mm", plan => plan.Panel.Blank.LengthMm),
            Figure("panelMass", "mass of the panel's blank", "kg", plan => plan.Panel.Blank.MassKg),
            Figure("formMass", "mass of the form's blank", "kg", plan => plan.Form.Blank.MassKg),
            Figure("panelRadiusLimit", "least inside radius of the panel, grain unknown", "mm", _ => Limit("panel-radius")),
            Figure("foldRadiusLimit", "least inside radius of the folds, grain unknown", "mm", _ => Limit("fold-radius")),
            row.Near("buildMinutes", "time to build the form", "min", Digits, () => estimate.Value.FormMinutes.Likely),
            row.Near("panelMinutes", "time of a panel", "min", Digits, () => estimate.Value.FirstPanelMinutes.Likely),
        ];
    }

    private static PanelSpec PanelOf(PrintedRow row) => new()
    {
        Springback = new PureBending(),
        Sheet = new(Metal(row, "panel"), row["thickness"]),
        Curve = new ArcCurve(row["radius"], Angle.FromDegrees(row["sweep"])),
        WidthMm = row["width"],
        LeadInMm = row["leadIn"],
        LeadOutMm = row["leadOut"],
        TrimMm = row["trim"],
        LeverMm = row["lever"],
        Clamp = new(row["clampGap"], 40, row["clampDepth"]),
        Finish = Finish.Satin,
    };

    private static FormSpec FormOf(PrintedRow row) => new()
    {
        Sheet = new(Metal(row, "form"), row["formThickness"]),
        FoldRadiusMm = row["foldRadius"],
        NeutralFactor = row["neutralFactor"],
        LeadInMm = row["formLeadIn"],
        LeadOutMm = row["formLeadOut"],
        WidthMm = row["width"],
        Stepping = new() { Folds = (int)row["folds"] },
    };

    private static Material Metal(PrintedRow row, string part) => TextbookMetal.Hardening(
        row[part + "Modulus"], row[part + "Poisson"], row[part + "Yield"], row[part + "N"], row[part + "K"]) with
    {
        UltimateMpa = row[part + "Ultimate"],
        DensityKgPerCubicMetre = row[part + "Density"],
        MinRadiusOverThickness = row[part + "Radius"],
    };
}
