using System.Globalization;
using Forming.Results;

namespace FormApi.Http.Json;

/// <summary>How numbers go into an answer.</summary>
internal static class WireNumber
{
    /// <summary>A number as it is shown: finite, nine decimals, no negative zero.</summary>
    /// <param name="value">The number.</param>
    /// <exception cref="NoSolutionException">The number is not finite.</exception>
    public static double Of(double value) => Math.Round(Finite.Of(value), 9) + 0.0;

    /// <summary>A number with so many digits that count, or null where it is not finite.</summary>
    /// <param name="value">The number.</param>
    /// <param name="digits">Digits, 1 to 15.</param>
    public static double? Significant(double value, int digits) => double.IsFinite(value)
        ? 0.0 + double.Parse(
            value.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        : null;
}
