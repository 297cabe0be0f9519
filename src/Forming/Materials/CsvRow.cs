using System.Globalization;

namespace Forming.Materials;

/// <summary>One row of a <see cref="CsvTable"/>, its fields by column name.</summary>
/// <param name="place">Table and row, for messages.</param>
/// <param name="columns">Index of each column.</param>
/// <param name="fields">The fields, in column order.</param>
internal sealed class CsvRow(string place, IReadOnlyDictionary<string, int> columns, IReadOnlyList<string> fields)
{
    /// <summary>The field as it is; empty where nothing is given.</summary>
    /// <param name="column">Column name.</param>
    public string Text(string column) =>
        columns.TryGetValue(column, out var index) ? fields[index] : throw Bad(column, "no such column");

    /// <summary>The field as a finite number.</summary>
    /// <param name="column">Column name.</param>
    public double Number(string column) =>
        OptionalNumber(column) ?? throw Bad(column, "not a number");

    /// <summary>The field as a finite number, or null where it is empty.</summary>
    /// <param name="column">Column name.</param>
    public double? OptionalNumber(string column)
    {
        var text = Text(column);
        if (text.Length == 0) return null;
        var isNumber = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value);
        return isNumber && double.IsFinite(value) ? value : throw Bad(column, $"'{text}' is not a finite number");
    }

    /// <summary>The field as a decimal, every printed digit kept.</summary>
    /// <param name="column">Column name.</param>
    public decimal Decimal(string column)
    {
        var text = Text(column);
        return decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            ? value
            : throw Bad(column, $"'{text}' is not a decimal");
    }

    /// <summary>The field as a whole number.</summary>
    /// <param name="column">Column name.</param>
    public int Integer(string column) =>
        OptionalInteger(column) ?? throw Bad(column, "not a whole number");

    /// <summary>The field as a whole number, or null where it is empty.</summary>
    /// <param name="column">Column name.</param>
    public int? OptionalInteger(string column)
    {
        var text = Text(column);
        if (text.Length == 0) return null;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value)
            ? value
            : throw Bad(column, $"'{text}' is not a whole number");
    }

    /// <summary>The field as a word of a fixed list, written <c>lower-case-with-hyphens</c>.</summary>
    /// <typeparam name="T">The list.</typeparam>
    /// <param name="column">Column name.</param>
    public T Word<T>(string column) where T : struct, Enum
    {
        var text = Text(column);
        foreach (var value in Enum.GetValues<T>())
        {
            if (string.Equals(value.ToString(), text.Replace("-", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase))
                return value;
        }

        throw Bad(column, $"'{text}' is not a {typeof(T).Name}");
    }

    private FormatException Bad(string column, string fault) => new($"{place}, {column}: {fault}.");
}
