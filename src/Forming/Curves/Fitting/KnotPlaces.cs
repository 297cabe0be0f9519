namespace Forming.Curves.Fitting;

/// <summary>Where the curvature may change its slope.</summary>
internal static class KnotPlaces
{
    /// <summary>Knots nearer than this share of the pattern are one.</summary>
    private const double SameKnot = 1e-6;

    /// <summary>No span needs to be kept longer than this share of the pattern.</summary>
    private const double LongSpan = 1.0 / 16;

    /// <summary>Knots between which lie equally many points: where points are dense, the curve was worth measuring.</summary>
    /// <param name="fit">A fit whose feet and length to go by.</param>
    /// <param name="count">How many knots, at least 2.</param>
    public static double[] Even(NormalFit fit, int count)
    {
        var feet = fit.Stations.Order().ToArray();
        (feet[0], feet[^1]) = (0, fit.Profile.Length);
        var knots = new double[count];
        for (var k = 1; k < count; k++)
        {
            var place = (double)k / (count - 1) * (feet.Length - 1);
            var j = Math.Min((int)place, feet.Length - 2);
            knots[k] = feet[j] + ((place - j) * (feet[j + 1] - feet[j]));
        }

        return IsRising(knots, SameKnot) ? knots : Uniform(count, fit.Profile.Length);
    }

    /// <summary>The fit's knots and one more, amid the points of the span that misses most; null when no span can spare any.</summary>
    /// <param name="fit">The fit to refine.</param>
    /// <remarks>
    /// No span becomes shorter than √(8 d/κ) of the mean miss d and the peak curvature κ: within it the misses hide all the bend
    /// there is, and a knot more would only let the curvature swing.
    /// </remarks>
    public static double[]? Split(NormalFit fit)
    {
        var miss = Math.Sqrt(fit.Sum / fit.Misses.Length);
        var shortest = Math.Clamp(Math.Sqrt(8 * miss / fit.Profile.Peak), SameKnot, LongSpan);
        var (worst, best) = (0.0, (double[]?)null);
        for (var m = 0; m < fit.Profile.Knots.Length - 1; m++)
        {
            var (sum, middle) = Inside(fit, fit.Profile.Knots[m], fit.Profile.Knots[m + 1]);
            if (!(sum > worst)) continue;
            double[] split = [.. fit.Profile.Knots[..(m + 1)], middle, .. fit.Profile.Knots[(m + 1)..]];
            if (middle - split[m] > shortest && split[m + 2] - middle > shortest) (worst, best) = (sum, split);
        }

        return best;
    }

    /// <summary>Squared misses of the points in a span, and the place amid them; no sum where fewer than two lie inside.</summary>
    private static (double Sum, double Middle) Inside(NormalFit fit, double from, double to)
    {
        var inside = Enumerable.Range(0, fit.Feet.Length).Where(j => fit.Feet[j] > from && fit.Feet[j] < to).ToArray();
        return inside.Length < 2
            ? default
            : (inside.Sum(j => fit.Misses[j] * fit.Misses[j]), (fit.Feet[inside[(inside.Length - 1) / 2]] + fit.Feet[inside[inside.Length / 2]]) / 2);
    }

    private static double[] Uniform(int count, double length) => [.. Enumerable.Range(0, count).Select(k => length * k / (count - 1))];

    private static bool IsRising(double[] knots, double least) =>
        Enumerable.Range(1, knots.Length - 1).All(k => knots[k] - knots[k - 1] > least);
}
