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
            : (
                inside.Sum(j => fit.Misses[j] * fit.Misses[j]),
                (fit.Feet[inside[(inside.Length - 1) / 2]] + fit.Feet[inside[inside.Length / 2]]) / 2);
    }

    private static double[] Uniform(int count, double length) => [.. Enumerable.Range(0, count).Select(k => length * k / (count - 1))];

    private static bool IsRising(double[] knots, double least) =>
        Enumerable.Range(1, knots.Length - 1).All(k => knots[k] - knots[k - 1] > least);
}

/// <summary>The staircase nearest to a row of numbers.</summary>
internal static class Steps
{
    /// <summary>Where the steps begin, by dynamic programming over all places.</summary>
    /// <param name="row">[n] numbers.</param>
    /// <param name="steps">How many steps, at most n.</param>
    /// <returns>[steps + 1] index of the first number of each step; the last is n.</returns>
    public static int[] Nearest(double[] row, int steps)
    {
        var count = row.Length;
        var (sums, squares) = (new double[count + 1], new double[count + 1]);
        for (var i = 0; i < count; i++) (sums[i + 1], squares[i + 1]) = (sums[i] + row[i], squares[i] + (row[i] * row[i]));

        // cost[k][j]: the first j numbers on k + 1 steps; from[k][j]: where the last of them begins.
        var (cost, from) = (new double[steps][], new int[steps][]);
        for (var k = 0; k < steps; k++)
        {
            (cost[k], from[k]) = (new double[count + 1], new int[count + 1]);
            for (var j = k + 1; j <= count; j++)
            {
                cost[k][j] = k == 0 ? Scatter(0, j) : double.PositiveInfinity;
                for (var i = k; k > 0 && i < j; i++)
                {
                    var total = cost[k - 1][i] + Scatter(i, j);
                    if (total < cost[k][j]) (cost[k][j], from[k][j]) = (total, i);
                }
            }
        }

        var starts = new int[steps + 1];
        starts[steps] = count;
        for (var k = steps - 1; k > 0; k--) starts[k] = from[k][starts[k + 1]];
        return starts;

        double Scatter(int i, int j) => squares[j] - squares[i] - ((sums[j] - sums[i]) * (sums[j] - sums[i]) / (j - i));
    }
}
