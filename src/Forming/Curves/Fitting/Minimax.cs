namespace Forming.Curves.Fitting;

/// <summary>Lowers the largest miss of a least-squares fit, at the cost of the others.</summary>
internal static class Minimax
{
    private const int MostRounds = 40;

    /// <summary>Rounds without a better curve after which there is none to come.</summary>
    private const int Patience = 6;

    /// <summary>A miss that falls below this share of the least before is an advance.</summary>
    private const double Better = 0.998;

    /// <summary>A point without a miss keeps this share of its weight: in a later round it may be the one that counts.</summary>
    private const double KeptShare = 0.05;

    /// <summary>The fit as near to the worst points as need be; its knots and its flats stay.</summary>
    /// <param name="fit">A least-squares fit that bends one way.</param>
    /// <param name="isEnough">Whether a curve is near enough.</param>
    /// <returns>The first curve that is near enough, or the one of the smallest largest miss.</returns>
    /// <remarks>
    /// Lawson's iteration (from memory): weights multiplied by the misses make least squares approach the curve whose largest miss
    /// is smallest. It starts with the least-squares curve, so it goes no further towards the extreme points than it must.
    /// </remarks>
    public static NormalFit From(NormalFit fit, Func<NormalFit, bool> isEnough)
    {
        var (weights, current, best) = (new double[fit.Misses.Length], fit, fit);
        Array.Fill(weights, 1);
        var since = 0;
        for (var round = 0; round < MostRounds && since < Patience && !isEnough(best); round++, since++)
        {
            Reweigh(weights, current);
            current = current.Weighted(weights);
            if (!OneWay.Bends(current)) break;
            if (current.LargestMiss < Better * best.LargestMiss) since = 0;
            if (current.LargestMiss < best.LargestMiss) best = current;
        }

        return best;
    }

    private static void Reweigh(double[] weights, NormalFit fit)
    {
        var (largest, sum) = (fit.LargestMiss, 0.0);
        for (var j = 0; j < weights.Length; j++)
        {
            weights[j] *= KeptShare + ((1 - KeptShare) * Math.Abs(fit.Misses[j]) / largest);
            sum += weights[j];
        }

        for (var j = 0; j < weights.Length; j++) weights[j] *= weights.Length / sum;
    }
}
