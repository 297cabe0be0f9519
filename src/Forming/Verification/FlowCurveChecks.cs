using Forming.Materials;
using Forming.Springback;

namespace Forming.Verification;

/// <summary>Flow curves from strengths and elongation against arithmetic by hand.</summary>
internal static class FlowCurveChecks
{
    private const double Digits = 2e-8;

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read(
            "flow-curve-estimates",
            "Flow curves from yield, ultimate strength and elongation",
            "{name}: yield {yield} MPa, ultimate strength {ultimate} MPa, elongation {elongation} %, K {strengthCoefficient} MPa, n {strainHardening}",
            row =>
            [
                row.Near("n", "exponent n", "", Digits, () => FlowCurve.Of(Metal(row)).Hardening),
                row.Near("prestrain", "strain eps0 at yield", "", Digits, () => FlowCurve.Of(Metal(row)).Prestrain),
                row.Near("implied", "ultimate strength that follows from the curve", "MPa", Digits, () => FlowCurve.Of(Metal(row)).UltimateMpa),
            ]),
    ];

    private static Material Metal(PrintedRow row) => TextbookMetal.Perfect(70e3, 0.3, row["yield"]) with
    {
        UltimateMpa = row["ultimate"],
        ElongationPercent = row["elongation"],
        StrengthCoefficientMpa = row.Optional("strengthCoefficient"),
        StrainHardening = row.Optional("strainHardening"),
    };
}
