namespace Forming.Curves.Fitting;

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
