using MathNet.Numerics.Distributions;

namespace Forming.TestStrips;

/// <summary>A reason not to use what strips taught before it is cleared up.</summary>
/// <param name="Id">Stable id such as <c>yield-implausible</c>.</param>
/// <param name="Strips">Places of the strips in question; empty where it is all of them.</param>
/// <param name="Text">What is doubtful and what to look for, in words.</param>
public sealed record StripDoubt(string Id, IReadOnlyList<int> Strips, FormattableString Text);

/// <summary>Finds strips that cannot all be right.</summary>
internal static class StripDoubts
{
    // Shared out over all pairs (Bonferroni): one in twenty sets of good strips is doubted without cause, at most.
    private const double FalseAlarms = 0.05;

    private const double Two = 1.959963984540054;

    /// <summary>How much wider than its 95 % reading error a strip's own interval is drawn, so that chance alone rarely parts a pair.</summary>
    /// <param name="strips">Number of strips, at least 1.</param>
    /// <remarks>Intervals of two readings meet while the readings differ by less than both half-widths together.</remarks>
    public static double Widening(int strips)
    {
        var pairs = Math.Max(1, strips * (strips - 1) / 2);
        return Math.Max(1, Normal.InvCDF(0, 1, 1 - (FalseAlarms / pairs / 2)) / (Math.Sqrt(2) * Two));
    }

    /// <summary>The two strips whose own intervals lie furthest apart, or null where all meet.</summary>
    /// <param name="intervals">Each strip's own interval, low end and high end.</param>
    public static (int Low, int High)? Apart(IReadOnlyList<(double Low, double High)> intervals)
    {
        var low = Enumerable.Range(0, intervals.Count).MinBy(i => intervals[i].High);
        var high = Enumerable.Range(0, intervals.Count).MaxBy(i => intervals[i].Low);
        return intervals[high].Low > intervals[low].High ? (low, high) : null;
    }
}
