using Forming.Folds;
using Forming.TestStrips;

namespace Forming.Verification;

/// <summary>
/// Bend allowance, setback and deduction against tables and worked examples, and neutral factors read backwards from them.
/// </summary>
internal static class FoldChecks
{
    /// <summary>The neutral factor that the FAA's 0.0078 T a degree stands for.</summary>
    private static readonly double FaaFactor = 0.0078 / Radians(1);

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read(
            "bend-allowance-checks",
            "Bend allowance, setback and deduction",
            "inside radius {radius} mm, thickness {thickness} mm, {degrees}°, neutral factor {factor}",
            Allowances),
        CheckTable.Read(
            "faa-bend-allowance-chart",
            "Bend allowance by the aircraft chart",
            "inside radius {radius} in, thickness {thickness} in, {degrees}°, neutral factor 0.0078 × 180/π",
            row => [row.Check("allowance", "bend allowance", "in", row["allowance"], (0.0015 * row["allowance"]) + row["halfDigit"], () => Faa(row).BendAllowance(Turn(row)))]),
        CheckTable.Read(
            "faa-setback-factors",
            "Setback by the aircraft table",
            "{degrees}°, radius and thickness together 1",
            row => [row.Within("factor", "setback over radius and thickness", "", row["tolerance"], () => new FoldShape(0.75, 0.25, 0.5).Setback(Turn(row)))]),
        CheckTable.Read(
            "faa-setback-examples",
            "Setback by the advisory circular's worked examples",
            "inside radius {radius} in, thickness {thickness} in, {degrees}°",
            row => [row.Within("setback", "setback", "in", 5e-4, () => Faa(row).Setback(Turn(row)))]),
        CheckTable.Read(
            "faa-handbook-channel",
            "Channel of the aircraft handbook",
            "channel of {thickness} in, inside radius {radius} in, flats {web} and twice {flange} in; allowance off the chart's column R = {chartRadius} in",
            Channel),
        CheckTable.Read(
            "training-workbook-bend",
            "Bend of the training workbook",
            "inside radius {radius} in, thickness {thickness} in, {degrees}°, neutral factor 0.0078 × 180/π",
            row =>
            [
                row.Within("allowance", "bend allowance", "in", 5e-4, () => Faa(row).BendAllowance(Turn(row))),
                row.Within("setbacks", "twice the setback", "in", 5e-4, () => 2 * Faa(row).Setback(Turn(row))),
                row.Within("deduction", "bend deduction", "in", 5e-4, () => Faa(row).Deduction(Turn(row))),
            ]),
        CheckTable.Read(
            "machinery-handbook-straight-lengths",
            "Straight stock for a bend by the machinists' rule",
            "{name}: inside radius {radius} in, thickness {thickness} in, {degrees}°, neutral factor {factor}",
            row => [row.Near("length", "bend allowance", "in", 1e-3, () => Fold(row).BendAllowance(Turn(row)))]),
        CheckTable.Read(
            "din-6935-developed-length",
            "Correction of the developed length by DIN 6935",
            "inside radius {r} mm, thickness {s} mm, opening {opening}°",
            row =>
            [
                row.Within("k", "factor k", "", 1e-6, () => 2 * NeutralLine.Factor(row["r"], row["s"])),
                row.Within("v", "correction v", "mm", 1.5e-6, () => Correction(row["r"], row["s"], row["opening"])),
            ]),
    ];

    private static CheckValue[] Allowances(PrintedRow row)
    {
        // Six decimals of the table, over a t.
        var digits = 2e-6 / (Turn(row) * row["thickness"]);
        var toMold = new Lazy<NeutralLesson>(() => Learn(row, 100 - row["deduction"], FlangeEnd.MoldLine));
        return
        [
            row.Within("allowance", "bend allowance", "mm", 6e-7, () => Fold(row).BendAllowance(Turn(row))),
            row.Within("setback", "outside setback", "mm", 6e-7, () => Fold(row).Setback(Turn(row))),
            row.Within("deduction", "bend deduction", "mm", 6e-7, () => Fold(row).Deduction(Turn(row))),
            row.Check("factor-from-deduction", "neutral factor, learnt back from a strip with the printed deduction", "", row["factor"], digits, () => toMold.Value.Factor.Value),
            row.Check("allowance-from-deduction", "bend allowance, learnt back from a strip with the printed deduction", "mm", row["allowance"], 1e-6, () => toMold.Value.Readings[0].AllowanceMm),
            row.Check("factor-from-allowance", "neutral factor, learnt back from a strip with the printed allowance", "", row["factor"], digits, () => Learn(row, 100 + row["allowance"], FlangeEnd.TangentLine).Factor.Value),
        ];
    }

    private static CheckValue[] Channel(PrintedRow row)
    {
        var right = Radians(90);
        double Allowance() => new FoldShape(row["chartRadius"], row["thickness"], FaaFactor).BendAllowance(right);
        return
        [
            row.Within("setback", "setback of each bend", "in", 1e-12, () => Faa(row).Setback(right)),
            row.Within("allowance", "bend allowance of each bend", "in", 0.005, Allowance),
            row.Within("developed", "developed width", "in", 0.01, () => row["web"] + (2 * (row["flange"] + Allowance()))),
        ];
    }

    private static NeutralLesson Learn(PrintedRow row, double flatMm, FlangeEnd end) => NeutralStrips.Learn(new()
    {
        ThicknessMm = row["thickness"],
        Strips = [new(flatMm, 45, 55, new(Turn(row)), row["radius"], row["thickness"])],
        MeasuredTo = end,
    });

    private static double Correction(double radius, double thickness, double opening)
    {
        var fold = new FoldShape(radius, thickness, NeutralLine.Factor(radius, thickness));
        var turned = Radians(180 - opening);
        var outside = opening <= 90 ? 2 * fold.OuterRadiusMm : 2 * fold.Setback(turned);
        return fold.BendAllowance(turned) - outside;
    }

    private static FoldShape Fold(PrintedRow row) => new(row["radius"], row["thickness"], row["factor"]);

    private static FoldShape Faa(PrintedRow row) => new(row["radius"], row["thickness"], FaaFactor);

    private static double Turn(PrintedRow row) => Radians(row["degrees"]);

    private static double Radians(double degrees) => Angle.FromDegrees(degrees).Radians;
}
