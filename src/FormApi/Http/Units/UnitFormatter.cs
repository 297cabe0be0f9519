using System.Globalization;
using Forming.Results;

namespace FormApi.Http.Units;

/// <summary>Turns the library's messages into text in the caller's units, with their names and sensible digits.</summary>
/// <param name="units">The caller's units.</param>
internal sealed class UnitFormatter(UnitSystem units) : IFormatProvider, ICustomFormatter
{
    /// <summary>A message as text.</summary>
    /// <param name="message">The message; its arguments are figures.</param>
    public string Of(FormattableString message) => message.ToString(this);

    /// <summary>A message as text, or null where there is none.</summary>
    /// <param name="message">The message; its arguments are figures.</param>
    public string? OfOptional(FormattableString? message) => message?.ToString(this);

    object? IFormatProvider.GetFormat(Type? formatType) =>
        formatType == typeof(ICustomFormatter) ? this : CultureInfo.InvariantCulture.GetFormat(formatType!);

    string ICustomFormatter.Format(string? format, object? arg, IFormatProvider? formatProvider) => arg switch
    {
        Figure figure => Text(figure, format),
        double number => Digits(number, format),
        // A message within a message has figures of its own.
        FormattableString inner => inner.ToString(this),
        IFormattable other => other.ToString(format, CultureInfo.InvariantCulture),
        _ => arg?.ToString() ?? "",
    };

    private string Text(Figure figure, string? format)
    {
        var number = Digits(units.Figure(figure.Value, figure.Quantity), format);
        return figure.Quantity switch
        {
            Quantity.Number => number,
            Quantity.Angle => number + "°",
            _ => $"{number} {units.NameOf(figure.Quantity)}",
        };
    }

    // Four digits are what a bench can use; large numbers keep all before the point.
    private static string Digits(double number, string? format)
    {
        number = Finite.Of(number);
        if (!string.IsNullOrEmpty(format))
            return number.ToString(format, CultureInfo.InvariantCulture);
        var decimals = Math.Abs(number) switch
        {
            0 => 0,
            >= 1000 => 0,
            >= 100 => 1,
            >= 10 => 2,
            >= 1 => 3,
            >= 0.1 => 4,
            >= 0.01 => 5,
            _ => 6,
        };
        return (Math.Round(number, decimals) + 0.0).ToString("0.######", CultureInfo.InvariantCulture);
    }
}
