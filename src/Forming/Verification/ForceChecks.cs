using Forming.Programs;
using Forming.Programs.Brakes;

namespace Forming.Verification;

/// <summary>What folds ask of a brake against published values.</summary>
internal static class ForceChecks
{
    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read(
            "air-bending-forces",
            "Force of an air bend",
            "{name}: factor {factor}, ultimate strength {ultimate} MPa, width {width} mm, thickness {thickness} mm, die opening {opening} mm",
            row => [row.Within("force", "force", "N", row["tolerance"], () =>
                FoldLoad.AirBendForceN(row["factor"], row["ultimate"], row["width"], row["thickness"], row["opening"]))]),
        CheckTable.Read(
            "leaf-plastic-moment",
            "Moment of a leaf",
            "ultimate strength {ultimate} MPa, width {width} mm, thickness {thickness} mm",
            row => [row.Within("moment", "fully plastic moment", "N·mm", 6e-3, () =>
                FoldLoad.PlasticMomentNmm(row["ultimate"], row["width"], row["thickness"]))]),
        CheckTable.Read(
            "brake-arithmetic",
            "What a fold asks of a brake",
            "{name}: ultimate strength {ultimate} MPa, width {width} mm, thickness {thickness} mm, fold radius {foldRadius} mm, K {neutralFactor}, fold {fold}°, stop {stop}°; "
            + "die opening {opening} mm; handle {handle} mm, bearing {bearing} mm, beam depth {beamDepth} mm",
            Fold),
    ];

    private static CheckValue[] Fold(PrintedRow row)
    {
        const double digits = 2e-8;
        var stop = Angle.FromDegrees(row["stop"]).Radians;
        var part = new ProgramPart(
            [100, 100],
            [Angle.FromDegrees(row["fold"]).Radians],
            [stop],
            new(row["foldRadius"], row["thickness"], row["neutralFactor"]),
            row["width"],
            row["ultimate"],
            Angle.FromDegrees(0.5));
        var press = new PressBrake { LengthMm = 3000, DieOpeningMm = row["opening"] };
        var leaf = new LeafBrake { LengthMm = 3000, LeverMm = row["handle"], BearingMm = row["bearing"], BeamDepthMm = row["beamDepth"] };
        return
        [
            row.Near("force", "force of the ram", "N", digits, () => FoldLoad.Of(part, press).ForceN ?? double.NaN),
            row.Near("forceLow", "force of the ram without friction", "N", digits, () => FoldLoad.Of(part, press).ForceLowN ?? double.NaN),
            row.Near("depth", "depth of the ram", "mm", digits, () => press.ToolsFor(part).DepthMm(0, stop) ?? double.NaN),
            row.Near("moment", "moment at the leaf", "N·mm", digits, () => FoldLoad.Of(part, leaf).MomentNmm ?? double.NaN),
            row.Near("handleForce", "force at the handle", "N", digits, () => FoldLoad.Of(part, leaf).HandleForceN ?? double.NaN),
            row.Near("leafForce", "force of the leaf", "N", digits, () => FoldLoad.Of(part, leaf).LeafForceN ?? double.NaN),
            row.Near("clampForce", "force of the beam", "N", digits, () => FoldLoad.Of(part, leaf).ClampForceN ?? double.NaN),
            row.Near("openingByRule", "die opening where none is given", "mm", digits, () => (press with { DieOpeningMm = null }).DieOpeningFor(row["thickness"])),
        ];
    }
}
