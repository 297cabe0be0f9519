using Forming.Materials;
using Forming.Results;

namespace Forming.Verification;

/// <summary>A row of a printed table on its way to checks.</summary>
/// <param name="id">Table and number of the row.</param>
/// <param name="columns">The table's columns.</param>
/// <param name="row">The row.</param>
/// <param name="given">What its values are calculated from; <c>{column}</c> stands for the printed text.</param>
internal sealed class PrintedRow(string id, IReadOnlyList<string> columns, CsvRow row, string given)
{
    private readonly string _given = columns.Aggregate(
        given, (text, column) => text.Replace($"{{{column}}}", row.Text(column), StringComparison.Ordinal));

    /// <summary>A printed number.</summary>
    /// <param name="column">Its column.</param>
    public double this[string column] => row.Number(column);

    /// <summary>A printed number, or null where none is printed.</summary>
    /// <param name="column">Its column.</param>
    public double? Optional(string column) => row.OptionalNumber(column);

    /// <summary>A printed word.</summary>
    /// <param name="column">Its column.</param>
    public string Text(string column) => row.Text(column);

    /// <summary>A printed value to be met within a tolerance in its unit.</summary>
    /// <param name="column">Its column.</param>
    /// <param name="quantity">What it is, in words.</param>
    /// <param name="unit">Its unit, or empty.</param>
    /// <param name="tolerance">How far the engine may be off.</param>
    /// <param name="compute">The engine's own value.</param>
    public CheckValue Within(string column, string quantity, string unit, double tolerance, Func<double> compute) =>
        Check(column, quantity, unit, this[column], tolerance, compute);

    /// <summary>A printed value to be met within a share of itself.</summary>
    /// <param name="column">Its column.</param>
    /// <param name="quantity">What it is, in words.</param>
    /// <param name="unit">Its unit, or empty.</param>
    /// <param name="share">How far the engine may be off over the value.</param>
    /// <param name="compute">The engine's own value.</param>
    public CheckValue Near(string column, string quantity, string unit, double share, Func<double> compute) =>
        Check(column, quantity, unit, this[column], share * Math.Abs(this[column]), compute);

    /// <summary>A value that follows from the row.</summary>
    /// <param name="name">What distinguishes the check from others of the row.</param>
    /// <param name="quantity">What it is, in words.</param>
    /// <param name="unit">Its unit, or empty.</param>
    /// <param name="expected">The value.</param>
    /// <param name="tolerance">How far the engine may be off.</param>
    /// <param name="compute">The engine's own value.</param>
    public CheckValue Check(string name, string quantity, string unit, double expected, double tolerance, Func<double> compute) => new()
    {
        Id = $"{id}.{name}",
        Quantity = quantity,
        Given = _given,
        Expected = expected,
        Tolerance = tolerance,
        Unit = unit,
        Source = Text("source"),
        Status = row.Word<Status>("status"),
        Compute = compute,
    };
}
