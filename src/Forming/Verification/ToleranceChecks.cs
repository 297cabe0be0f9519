using Forming.Tolerances;

namespace Forming.Verification;

/// <summary>The tables of general tolerances, cell by cell, against a second transcription.</summary>
internal static class ToleranceChecks
{
    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read(
            "iso-2768-1-angles",
            "General tolerances of angles, ISO 2768-1",
            "class {class}, shorter leg {leg} mm",
            row => [row.Within("minutes", "permissible deviation", "′", 3e-9, () => Minutes("ISO 2768-1", row.Text("class"), row["leg"]))]),
        CheckTable.Read(
            "iso-2768-1-lengths",
            "General tolerances of lengths, ISO 2768-1",
            "class {class}, length {length} mm",
            row => [row.Within("deviation", "permissible deviation", "mm", 0, () =>
                GeneralTolerances.Find("ISO 2768-1", row.Text("class"), TolerancedQuantity.Length, row["length"])!.Deviation)]),
        CheckTable.Read(
            "din-6935-angles",
            "Permissible deviations of bend angles, DIN 6935",
            "shorter leg {leg} mm",
            row => [row.Within("minutes", "permissible deviation", "′", 3e-9, () => Minutes("DIN 6935", "", row["leg"]))]),
    ];

    private static double Minutes(string standard, string @class, double leg) =>
        60 * new Angle(GeneralTolerances.Find(standard, @class, TolerancedQuantity.Angle, leg)!.Deviation).Degrees;
}
