using MathNet.Numerics.Distributions;

namespace Forming.Learning;

/// <summary>Whether readings can be right: by themselves, and beside each other.</summary>
public static class Plausibility
{
    // Shared out over all pairs (Bonferroni): one in twenty sets of good readings is doubted without cause, at most.
    private const double FalseAlarms = 0.05;

    /// <summary>How far a grade's sheets lie from its yield stress, nearly always, as a share: an assumption.</summary>
    public const double GradeShare = 0.4;

    /// <summary>
    /// Past this share a panel that came off wrong has likelier another cause than its yield stress: thickness, lever, folds or clamp. An
    /// assumption.
    /// </summary>
    public const double PanelShare = 0.3;

    /// <summary>Whether a sheet of the grade may have a yield factor.</summary>
    /// <param name="factor">Learnt over nominal yield stress.</param>
    /// <param name="share">How far it may be off.</param>
    public static bool IsUsual(double factor, double share = GradeShare) => Math.Abs(factor - 1) <= share;

    /// <summary>
    /// How much wider than its 95 % error a reading's own interval is drawn, so that chance alone rarely parts a pair.
    /// </summary>
    /// <param name="readings">Number of readings, at least 1.</param>
    /// <remarks>Intervals of two readings meet while the readings differ by less than both half-widths together.</remarks>
    public static double Widening(int readings)
    {
        var pairs = Math.Max(1, readings * (readings - 1) / 2);
        return Math.Max(1, Normal.InvCDF(0, 1, 1 - (FalseAlarms / pairs / 2)) / (Math.Sqrt(2) * YieldPosterior.TwoSided));
    }

    /// <summary>The two readings whose own intervals lie furthest apart, or null where all meet.</summary>
    /// <param name="intervals">Each reading's own interval, low end and high end; an end that is not known is infinite.</param>
    public static (int Low, int High)? Apart(IReadOnlyList<(double Low, double High)> intervals)
    {
        var low = Enumerable.Range(0, intervals.Count).MinBy(i => intervals[i].High);
        var high = Enumerable.Range(0, intervals.Count).MaxBy(i => intervals[i].Low);
        return intervals[high].Low > intervals[low].High ? (low, high) : null;
    }

    /// <summary>The two readings of a posterior that no one yield explains, or null.</summary>
    /// <param name="posterior">The posterior.</param>
    public static (int Low, int High)? Apart(YieldPosterior posterior)
    {
        var each = posterior.Each();
        var widening = Widening(each.Count);
        return each.Count < 2 ? null : Apart([.. each.Select(one => (
            one.LnLow is { } low ? one.LnFactor - (widening * (one.LnFactor - low)) : double.NegativeInfinity,
            one.LnHigh is { } high ? one.LnFactor + (widening * (high - one.LnFactor)) : double.PositiveInfinity))]);
    }
}
