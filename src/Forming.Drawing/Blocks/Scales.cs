using System.Globalization;

namespace Forming.Drawing.Blocks;

/// <summary>Scales that a drawing office uses: those of ISO 5455 and the steps between that a rule shows too.</summary>
internal static class Scales
{
    private static readonly double[] Steps = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8];

    /// <summary>The largest such scale that is not above a given one.</summary>
    /// <param name="most">Drawing over part, &gt; 0.</param>
    public static double NotAbove(double most)
    {
        // One over a step times a power of ten below 1:1, that itself above.
        if (most >= 1)
            return Steps.SelectMany(step => Powers().Select(power => step * power)).Where(scale => scale <= most).Max();
        return 1 / Steps.SelectMany(step => Powers().Select(power => step * power)).Where(reduction => 1 / reduction <= most).Min();
    }

    /// <summary>A scale as it is written, such as <c>1:2.5</c>.</summary>
    /// <param name="scale">Drawing over part, &gt; 0.</param>
    public static string Name(double scale) => scale >= 1
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Round(scale, 6):0.##}:1")
        : string.Create(CultureInfo.InvariantCulture, $"1:{Math.Round(1 / scale, 6):0.##}");

    private static IEnumerable<double> Powers() => Enumerable.Range(0, 6).Select(exponent => Math.Pow(10, exponent));
}
