using Forming.Programs;

namespace Forming.Verification;

/// <summary>What folds ask of a brake against published figures.</summary>
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
    ];
}
