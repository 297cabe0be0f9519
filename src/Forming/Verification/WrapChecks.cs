using System.Globalization;
using Forming.Facets;
using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Verification;

/// <summary>
/// The strip solver against the project's own reference simulation and against finite elements; the closed form of print-through against
/// arithmetic.
/// </summary>
internal static class WrapChecks
{
    private const string Metal =
        "{name}: modulus {modulus} MPa, Poisson's ratio {poisson}, yield {yield} MPa, n {n}, prestrain {prestrain} or K {strengthCoefficient} MPa, thickness {thickness} mm, lever {lever} mm; ";

    private const string MetalAlone =
        "{name}: modulus {modulus} MPa, Poisson's ratio {poisson}, yield {yield} MPa, n {n}, prestrain {prestrain} or K {strengthCoefficient} MPa, thickness {thickness} mm; ";

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read(
            "wrap-model-panels",
            "Panels wrapped over a form and let go",
            Metal + "folds of radius {foldRadius} mm, facets {facetList} mm, folds {foldList}°",
            Panel),
        CheckTable.Read(
            "print-through-arithmetic",
            "Print-through by the closed form",
            Metal + "mid-surface radius {radius} mm, facet {facet} mm; limits {rippleLimit} mm and {slopeLimit}°",
            ClosedForm),
        CheckTable.Read(
            "finite-element-wraps",
            "Panels wrapped over a form and let go, by finite elements",
            MetalAlone + "{facets} facets of {facet} mm, folds {foldAngle}°",
            FiniteElements),
        CheckTable.Read(
            "finite-element-give",
            "Force of a wrap over a bare form, and how far its end turns, by finite elements",
            Metal + "facets {facetList} mm, folds {foldList}°",
            BareForm),
    ];

    private static CheckValue[] Panel(PrintedRow row)
    {
        var panel = new Lazy<WrappedPanel>(() => Wrap(
            row, Numbers(row.Text("facetList")), Numbers(row.Text("foldList")), row["foldRadius"], row["lever"]));
        Func<double> Complete(Func<WrappedPanel, double> figure) => () => figure(panel.Value);
        return
        [
            row.Near("radius", "radius over the middle folds", "mm", 0.01, Complete(panel => 1 / panel.MeanCurvature)),
            row.Near("sweep", "sweep of the whole panel", "°", 0.004, Complete(panel => panel.Sweep.Degrees)),
            row.Near("force", "force at the end of the pull", "N/mm", 0.008, Complete(panel => panel.Pull[^1].ForcePerWidth)),
            row.Near("ripple", "ripple of the worst facet", "mm", row["rippleShare"], Complete(panel => panel.Facets.Max(facet => facet.RippleMm))),
        ];
    }

    private static CheckValue[] ClosedForm(PrintedRow row)
    {
        const double digits = 2e-8;
        var limits = Finish.Own(row["rippleLimit"], Angle.FromDegrees(row["slopeLimit"]));
        BentState State() => Law(row).At(1 / row["radius"]);
        Ripple Facet() => PrintThrough.Compute(row["facet"], row["lever"], State(), Law(row).Stiffness)!.Value;
        double Allowed(double first) => PrintThrough.AllowedFacet(row["lever"], State(), Law(row).Stiffness, limits, first)!.Value;
        return
        [
            row.Near("moment", "moment per width", "N·mm/mm", digits, () => State().MomentPerWidth),
            row.Near("stiffness", "slope of the moment", "N·mm²/mm", digits, () => State().TangentStiffness),
            row.Near("work", "work of bending per area", "N/mm", digits, () => State().WorkPerArea),
            row.Near("ripple", "ripple", "mm", digits, () => Facet().HeightMm),
            row.Near("firstHalf", "ripple of a first facet, half folds at the ends", "mm", digits, () => PrintThrough.FirstFacetHalf * Facet().HeightMm),
            row.Near("firstFull", "ripple of a first facet, full folds at the ends", "mm", digits, () => PrintThrough.FirstFacetFull * Facet().HeightMm),
            row.Near("slope", "slope of the ripple", "°", digits, () => Facet().Slope.Degrees),
            row.Near("allowed", "allowed facet", "mm", digits, () => Allowed(1)),
            row.Near("allowedHalf", "allowed first facet, half folds at the ends", "mm", digits, () => Allowed(PrintThrough.FirstFacetHalf)),
            row.Near("allowedFull", "allowed first facet, full folds at the ends", "mm", digits, () => Allowed(PrintThrough.FirstFacetFull)),
            row.Near("longestLever", "longest lever from the touching fold", "mm", digits, () => PrintThrough.LongestLever(State())),
        ];
    }

    private static CheckValue[] FiniteElements(PrintedRow row)
    {
        var facets = (int)row["facets"];
        var panel = new Lazy<WrappedPanel>(() => Wrap(
            row,
            [.. Enumerable.Repeat(row["facet"], facets)],
            [row["foldAngle"] / 2, .. Enumerable.Repeat(row["foldAngle"], facets)],
            2,
            150));
        return
        [
            row.Near("radius", "radius over the middle folds", "mm", 0.015, () => 1 / panel.Value.MeanCurvature),
            row.Near("sweep", "sweep of the whole panel", "°", 0.01, () => panel.Value.Sweep.Degrees),
            row.Near("force", "force at the end of the pull", "N/mm", 0.015, () => panel.Value.Pull[^1].ForcePerWidth),
            row.Near("meanRipple", "mean ripple of the facets", "mm", 0.1, () => panel.Value.Facets.Average(facet => facet.RippleMm)),
        ];
    }

    private static CheckValue[] BareForm(PrintedRow row)
    {
        var sheet = BendingLaw.Of(new Sheet(TextbookMetal.Perfect(205000, 0.29, 250), 2));
        var beam = new FormBeam(sheet.Stiffness, sheet.ThicknessMm, sheet.FirstYieldMoment);
        var panel = new Lazy<WrappedPanel>(() => Wrap(
            row, Numbers(row.Text("facetList")), Numbers(row.Text("foldList")), 4, row["lever"], beam));
        return
        [
            row.Near("force", "force at the end of the pull", "N/mm", 0.02, () => panel.Value.Pull[^1].ForcePerWidth),
            row.Near("rotation", "turn of the form's end", "°", 0.08, () => panel.Value.Form.Turn.Degrees),
        ];
    }

    private static WrappedPanel Wrap(
        PrintedRow row, double[] facets, double[] folds, double foldRadiusMm, double leverMm, FormBeam? beam = null)
    {
        var panel = PanelWrap.Compute(
            new StandingForm(facets, [.. folds.Select(fold => Angle.FromDegrees(fold).Radians)], foldRadiusMm),
            Law(row),
            new(leverMm, Beam: beam));
        return panel.End == WrapEnd.Complete ? panel : throw new InvalidOperationException("The wrap is not complete.");
    }

    private static BendingLaw Law(PrintedRow row)
    {
        double modulus = row["modulus"], poisson = row["poisson"], yield = row["yield"], n = row["n"];
        var metal = row.Optional("prestrain") is { } prestrain
            ? TextbookMetal.Swift(modulus, poisson, yield, n, prestrain)
            : TextbookMetal.Hardening(modulus, poisson, yield, n, row["strengthCoefficient"]);
        return BendingLaw.Of(new Sheet(metal, row["thickness"]));
    }

    private static double[] Numbers(string list) =>
        [.. list.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
}
