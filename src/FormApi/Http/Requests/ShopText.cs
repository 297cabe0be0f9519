using System.Globalization;
using System.Text.RegularExpressions;

namespace FormApi.Http.Requests;

/// <summary>Figures as people write them in a shop.</summary>
internal static partial class ShopText
{
    /// <summary>What would do for a length, in words.</summary>
    public const string LengthAllowed = "a number; where units is in, a length also as text such as 4 1/2";

    /// <summary>A length in inches: <c>4 1/2</c>, <c>4-1/2</c>, <c>3/32</c>, <c>4.5</c>, with or without unit; null for others.</summary>
    /// <param name="text">The text.</param>
    public static double? Inches(string text)
    {
        if (Length().Match(text) is not { Success: true } match)
            return null;
        var whole = match.Groups["whole"] is { Success: true } given ? Number(given.ValueSpan) : 0;
        if (!match.Groups["over"].Success)
            return whole;
        var below = Number(match.Groups["below"].ValueSpan);
        return below > 0 ? whole + (Number(match.Groups["over"].ValueSpan) / below) : null;
    }

    /// <summary>A gauge: <c>20</c>, <c>20 ga</c>, <c>20 gauge</c>; null for anything else.</summary>
    /// <param name="text">The text.</param>
    public static int? Gauge(string text) =>
        GaugeNumber().Match(text) is { Success: true } match
            ? int.Parse(match.Groups["number"].ValueSpan, CultureInfo.InvariantCulture)
            : null;

    private static double Number(ReadOnlySpan<char> digits) =>
        double.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(
        """^\s*(?:(?<whole>\d{1,6}(?:\.\d{1,9})?)|(?:(?<whole>\d{1,6})(?:\s+|-))?(?<over>\d{1,4})/(?<below>\d{1,4}))\s*(?:"|″|in\.?|inch(?:es)?)?\s*$""",
        RegexOptions.CultureInvariant)]
    private static partial Regex Length();

    [GeneratedRegex("""^\s*(?<number>\d{1,2})\s*(?:ga\.?|gage|gauge)?\s*$""", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex GaugeNumber();
}
