namespace Forming.Learning;

/// <summary>A density on an even grid, another unknown summed out.</summary>
/// <param name="Low">First place.</param>
/// <param name="Step">From one place to the next.</param>
/// <param name="Shares">Share of each place, together 1.</param>
internal sealed record Marginal(double Low, double Step, double[] Shares)
{
    /// <summary>Mean.</summary>
    public double Mean { get; private init; }

    /// <summary>Standard deviation.</summary>
    public double Deviation { get; private init; }

    /// <summary>The likeliest place, between the places by a parabola of the logarithm.</summary>
    public double Peak { get; private init; }

    /// <summary>Mean of the unknown that was summed out.</summary>
    public double OtherMean { get; private init; }

    /// <summary>Standard deviation of the unknown that was summed out.</summary>
    public double OtherDeviation { get; private init; }

    /// <summary>Sums a density up.</summary>
    /// <param name="middle">Middle of the grid.</param>
    /// <param name="half">From there to its ends.</param>
    /// <param name="points">Places.</param>
    /// <param name="others">Places of the other unknown.</param>
    /// <param name="logDensities">Logarithm of the density at a place, for all of the others, up to a constant; may be minus
    /// infinity.</param>
    public static Marginal Of(double middle, double half, int points, double[] others, Func<double, double[], double[]> logDensities)
    {
        double low = middle - half, step = 2 * half / (points - 1);
        var logs = new double[points][];
        var top = double.NegativeInfinity;
        for (var i = 0; i < points; i++)
        {
            logs[i] = logDensities(low + (i * step), others);
            top = Math.Max(top, logs[i].Max());
        }

        var shares = new double[points];
        double sum = 0, first = 0, second = 0, otherFirst = 0, otherSecond = 0;
        for (var i = 0; i < points; i++)
        {
            for (var j = 0; j < others.Length; j++)
            {
                var share = double.IsNegativeInfinity(top) ? 1 : Math.Exp(logs[i][j] - top);
                shares[i] += share;
                otherFirst += share * others[j];
                otherSecond += share * others[j] * others[j];
            }

            sum += shares[i];
            first += shares[i] * i;
        }

        first /= sum;
        (otherFirst, otherSecond) = (otherFirst / sum, otherSecond / sum);
        for (var i = 0; i < points; i++)
        {
            shares[i] /= sum;
            second += shares[i] * (i - first) * (i - first);
        }

        return new(low, step, shares)
        {
            Mean = low + (first * step),
            Deviation = step * Math.Sqrt(second),
            Peak = low + (step * PeakOf(shares)),
            OtherMean = otherFirst,
            OtherDeviation = Math.Sqrt(Math.Max(0, otherSecond - (otherFirst * otherFirst))),
        };
    }

    /// <summary>Where a share of the whole lies below.</summary>
    /// <param name="share">The share, 0 to 1.</param>
    public double At(double share)
    {
        double below = 0;
        for (var i = 0; i < Shares.Length; i++)
        {
            if (below + Shares[i] >= share && Shares[i] > 0)
                return Low + (Step * (i - 0.5 + ((share - below) / Shares[i])));
            below += Shares[i];
        }

        return Low + (Step * (Shares.Length - 0.5));
    }

    private static double PeakOf(double[] shares)
    {
        var top = Array.IndexOf(shares, shares.Max());
        if (top == 0 || top == shares.Length - 1 || !(shares[top - 1] > 0) || !(shares[top + 1] > 0))
            return top;
        double left = Math.Log(shares[top - 1]), middle = Math.Log(shares[top]), right = Math.Log(shares[top + 1]);
        var bend = left + right - (2 * middle);
        return bend < 0 ? top + ((left - right) / (2 * bend)) : top;
    }
}
