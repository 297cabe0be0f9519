using System.Globalization;
using Forming.Facets;
using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Verification;

/// <summary>The strip solver and the closed form of print-through against the project's own reference simulation.</summary>
internal static class WrapChecks
{
    private const string Metal =
        "{name}: modulus {modulus} MPa, Poisson's ratio {poisson}, yield {yield} MPa, n {n}, prestrain {prestrain} or K {strengthCoefficient} MPa, thickness {thickness} mm, lever {lever} mm; ";

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read(
            "wrap-model-panels",
            "Panels wrapped over a form and let go",
            Metal + "folds of radius {foldRadius} mm, facets {facetList} mm, folds {foldList}°",
            Panel),
        CheckTable.Read(
            "wrap-model-ripples",
            "Ripple by the closed form",
            Metal + "{facets} facets of {facet} mm, folds {foldDegrees}°, mid-surface radius {radius} mm; simulated ripple {ripple} mm, band 0.82 to 1.97",
            row => [row.Between("ripple", "worst ripple of the closed form over the simulated one", "", (0.82, 1.97), () => WorstRipple(row) / row["ripple"])]),
    ];

    private static CheckValue[] Panel(PrintedRow row)
    {
        var panel = new Lazy<WrappedPanel>(() => PanelWrap.Compute(
            new StandingForm(Numbers(row.Text("facetList")), [.. Numbers(row.Text("foldList")).Select(fold => Angle.FromDegrees(fold).Radians)], row["foldRadius"]),
            Law(row),
            new(row["lever"])));
        Func<double> Complete(Func<WrappedPanel, double> figure) => () => panel.Value.End == WrapEnd.Complete ? figure(panel.Value) : double.NaN;
        return
        [
            row.Near("radius", "radius over the middle folds", "mm", 0.01, Complete(panel => 1 / panel.MeanCurvature)),
            row.Near("sweep", "sweep of the whole panel", "°", 0.004, Complete(panel => panel.Sweep.Degrees)),
            row.Near("force", "force at the end of the pull", "N/mm", 0.008, Complete(panel => panel.Pull[^1].ForcePerWidth)),
            row.Near("ripple", "ripple of the worst facet", "mm", 0.09, Complete(panel => panel.Facets.Max(facet => facet.RippleMm))),
        ];
    }

    private static double WorstRipple(PrintedRow row)
    {
        var law = Law(row);
        var state = law.At(1 / row["radius"]);
        var step = Angle.FromDegrees(row["foldDegrees"]).Radians * row["radius"];
        var facets = (int)row["facets"];
        return Enumerable.Range(0, facets).Max(facet =>
            (facet == 0 ? PrintThrough.FirstFacetHalf : 1)
            * PrintThrough.Compute(row["facet"], row["lever"] + ((facets - facet) * step), state, law.Stiffness)!.Value.HeightMm);
    }

    private static BendingLaw Law(PrintedRow row)
    {
        double modulus = row["modulus"], poisson = row["poisson"], yield = row["yield"], n = row["n"];
        var metal = row.Optional("prestrain") is { } prestrain
            ? TextbookMetal.Swift(modulus, poisson, yield, n, prestrain)
            : TextbookMetal.Hardening(modulus, poisson, yield, n, row["strengthCoefficient"]);
        return BendingLaw.Of(new Sheet(metal, row["thickness"]));
    }

    private static double[] Numbers(string list) => [.. list.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
}
