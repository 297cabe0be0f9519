using System.Globalization;

namespace Forming;

/// <summary>Inches as a tape in inches reads.</summary>
public static class InchFraction
{
    /// <summary>The finest fraction there is [1/in].</summary>
    public const int Finest = 128;

    /// <summary>A length as a whole number and a fraction in lowest terms, such as <c>12 7/16</c> or <c>-3 1/2</c>.</summary>
    /// <param name="inches">The length [in]; a whole number of the finest fraction.</param>
    public static string Of(double inches)
    {
        var sign = inches < 0 ? "-" : "";
        var parts = (long)Math.Round(Math.Abs(inches) * Finest);
        long whole = parts / Finest, numerator = parts % Finest, denominator = Finest;
        while (numerator != 0 && numerator % 2 == 0)
            (numerator, denominator) = (numerator / 2, denominator / 2);
        return (whole, numerator) switch
        {
            (0, 0) => "0",
            (_, 0) => string.Create(CultureInfo.InvariantCulture, $"{sign}{whole}"),
            (0, _) => string.Create(CultureInfo.InvariantCulture, $"{sign}{numerator}/{denominator}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{sign}{whole} {numerator}/{denominator}"),
        };
    }
}
