using Forming.Materials;
using Forming.Results;

namespace Forming.Tolerances;

/// <summary>One cell of a published table of general tolerances.</summary>
/// <param name="Standard">Name of the standard.</param>
/// <param name="Class">Its class, or empty where it has none.</param>
/// <param name="Quantity">What it is for.</param>
/// <param name="OverMm">Sizes above this [mm]; the smallest length of all is itself included.</param>
/// <param name="ToMm">Sizes up to and including this [mm], or null without end.</param>
/// <param name="Deviation">Permissible deviation to either side [rad or mm].</param>
/// <param name="Source">Key of the source.</param>
/// <param name="Status">How the value was read.</param>
public sealed record GeneralTolerance(
    string Standard,
    string Class,
    TolerancedQuantity Quantity,
    double OverMm,
    double? ToMm,
    double Deviation,
    string Source,
    Status Status);

/// <summary>What a general tolerance is for.</summary>
public enum TolerancedQuantity
{
    /// <summary>An angle, by the length of its shorter leg.</summary>
    Angle,

    /// <summary>A length, by the length itself.</summary>
    Length,
}

/// <summary>Published general tolerances that apply to parts formed from sheet.</summary>
public static class GeneralTolerances
{
    private const double SmallestLengthMm = 0.5;

    /// <summary>Every cell of the tables.</summary>
    public static IReadOnlyList<GeneralTolerance> All { get; } =
        [.. CsvTable.ReadEmbedded("general-tolerances.csv", "Tolerances").Rows.Select(Read)];

    /// <summary>Standards and classes in order, a class empty where a standard has none.</summary>
    public static IReadOnlyList<(string Standard, string Class)> Classes { get; } =
        [.. All.Select(row => (row.Standard, row.Class)).Distinct()];

    /// <summary>The permissible deviation at a size.</summary>
    /// <param name="standard">Name of the standard.</param>
    /// <param name="class">Its class.</param>
    /// <param name="quantity">What it is for.</param>
    /// <param name="sizeMm">Shorter leg, or the length itself [mm].</param>
    /// <returns>The cell, or null where the table has none for this size.</returns>
    public static GeneralTolerance? Find(string standard, string @class, TolerancedQuantity quantity, double sizeMm) =>
        All.FirstOrDefault(row => row.Standard == standard && row.Class == @class && row.Quantity == quantity
            && (sizeMm > row.OverMm || (sizeMm == SmallestLengthMm && row.OverMm == SmallestLengthMm))
            && !(sizeMm > row.ToMm));

    private static GeneralTolerance Read(CsvRow row)
    {
        var quantity = row.Word<TolerancedQuantity>("quantity");
        var deviation = row.Number("deviation");
        return new(
            row.Text("standard"),
            row.Text("class"),
            quantity,
            row.Number("over_mm"),
            row.OptionalNumber("to_mm"),
            quantity == TolerancedQuantity.Angle ? Angle.FromDegrees(deviation / 60).Radians : deviation,
            row.Text("source"),
            row.Word<Status>("status"));
    }
}
