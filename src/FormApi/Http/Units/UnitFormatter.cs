using System.Globalization;
using Forming;
using Forming.Results;

namespace FormApi.Http.Units;

/// <summary>Turns the library's messages into text in the caller's units, with their names and sensible digits.</summary>
/// <param name="units">The caller's units.</param>
internal sealed class UnitFormatter(UnitSystem units) : IFormatProvider, ICustomFormatter
{
    /// <summary>A message as text.</summary>
    /// <param name="message">The message; its arguments are quantities.</param>
    public string Of(FormattableString message) => message.ToString(this);

    /// <summary>A message as text, or null where there is none.</summary>
    /// <param name="message">The message; its arguments are quantities.</param>
    public string? OfOptional(FormattableString? message) => message?.ToString(this);

    object? IFormatProvider.GetFormat(Type? formatType) =>
        formatType == typeof(ICustomFormatter) ? this : CultureInfo.InvariantCulture.GetFormat(formatType!);

    string ICustomFormatter.Format(string? format, object? arg, IFormatProvider? formatProvider) => arg switch
    {
        Figure figure => Text(figure, format),
        double number => Rounded(number, format, Quantity.Number),
        // A message within a message has quantities too.
        FormattableString inner => inner.ToString(this),
        IFormattable other => other.ToString(format, CultureInfo.InvariantCulture),
        _ => arg?.ToString() ?? "",
    };

    private string Text(Figure figure, string? format)
    {
        // A length to be laid out: "/16" is to a sixteenth of an inch; in mm it reads as any other.
        if (figure.Quantity == Quantity.Length && format is ['/', .. var parts])
        {
            format = null;
            if (units.Unit == LengthUnit.In)
            {
                var ofAnInch = int.Parse(parts, CultureInfo.InvariantCulture);
                return $"{InchFraction.Of(Math.Round(Finite.Of(figure.Value) / UnitFactors.InchMm * ofAnInch) / ofAnInch)} in";
            }
        }

        var number = Rounded(units.Figure(figure.Value, figure.Quantity), format, figure.Quantity);
        return figure.Quantity switch
        {
            Quantity.Number => number,
            Quantity.Angle => number + "°",
            _ => $"{number} {units.NameOf(figure.Quantity)}",
        };
    }

    private string Rounded(double number, string? format, Quantity quantity)
    {
        number = Finite.Of(number);
        if (!string.IsNullOrEmpty(format))
            return number.ToString(format, CultureInfo.InvariantCulture);
        if (number == 0)
            return "0";
        var first = FirstPlaceOf(number);
        // What a tape, a template, a scale or a gauge table shows; a small value keeps one digit, so that it never reads 0.
        var decimals = quantity switch
        {
            Quantity.Length when units.Unit == LengthUnit.In => first < -1 ? 4 : Math.Clamp(4 - first, 0, 3),
            Quantity.Length => Math.Clamp(3 - first, 0, 2),
            Quantity.Angle => first < 0 ? 2 : 1,
            Quantity.Number => first < 0 ? 2 - first : Math.Max(3 - first, 0),
            _ => 2 - first,
        };
        return Shortened(number, Math.Max(decimals, -first));
    }

    // Place of the first digit: 0 for 1 to 9.9, -1 below.
    private static int FirstPlaceOf(double number)
    {
        if (Math.Abs(number) is >= 1 and < 1e9)
        {
            var place = 0;
            for (var bound = 10.0; Math.Abs(number) >= bound; bound *= 10)
                place++;
            return place;
        }

        var digits = number.ToString("E15", CultureInfo.InvariantCulture);
        return int.Parse(digits.AsSpan(digits.IndexOf('E', StringComparison.Ordinal) + 1), CultureInfo.InvariantCulture);
    }

    private static string Shortened(double number, int decimals)
    {
        if (decimals > 15)
            return number.ToString("G3", CultureInfo.InvariantCulture);
        if (decimals >= 0)
        {
            var rounded = Math.Round(number, decimals) + 0.0;
            // The shortest text of such a number has no exponent, and is written several times as fast.
            return rounded.ToString(Math.Abs(rounded) is >= 1e-3 and < 1e9 ? null : "0.###############", CultureInfo.InvariantCulture);
        }

        var step = Math.Pow(10, -decimals);
        return (Math.Round(number / step) * step).ToString("0", CultureInfo.InvariantCulture);
    }
}
