namespace Forming.Curves.Fitting;

/// <summary>Makes flat what cannot be distinguished from flat: springback would need folds that scatter invented.</summary>
internal static class FlatStretches
{
    /// <summary>
    /// A flat must be long enough for the curvature that the tolerance hides in it, 8 tol/l², to be this small a share of the peak.
    /// </summary>
    private const double HiddenShare = 0.02;

    /// <summary>Shares of the peak below which curvature is tried as flat, the boldest first; the points decide.</summary>
    private static readonly double[] Trials = [0.25, 0.1, 0.05, HiddenShare];

    /// <summary>The fit with its flat stretches levelled and the rest fitted again, if it stays within the tolerance.</summary>
    /// <param name="fit">A fit within the tolerance, without negative curvature.</param>
    /// <param name="pattern">The points.</param>
    public static NormalFit Level(NormalFit fit, Pattern pattern)
    {
        foreach (var share in Trials)
        {
            var isFlat = Candidates(fit.Profile, share * fit.Profile.Peak, pattern.Tolerance);
            if (!Enumerable.Range(0, isFlat.Length).Any(k => isFlat[k] && fit.Profile.Unknowns[k] != CurvatureProfile.HeldFlat)) continue;
            var precision = KnotSearch.PrecisionFor(pattern);
            var level = OneWay.From(fit.Refit(fit.Profile.Flattened(k => isFlat[k]), precision), precision);
            if (level.LargestMiss <= pattern.Tolerance && OneWay.Bends(level)) return level;
        }

        return fit;
    }

    /// <summary>Knots in connected stretches of at most this curvature that are long enough to be called flat.</summary>
    private static bool[] Candidates(CurvatureProfile profile, double most, double tolerance)
    {
        var (knots, values) = (profile.Knots, profile.Values);
        var isFlat = new bool[values.Length];
        var shortest = Math.Sqrt(8 * tolerance / (HiddenShare * profile.Peak));
        for (var from = 0; from < values.Length; from++)
        {
            var to = from;
            while (to < values.Length && values[to] <= most) to++;
            if (to - from < 2 || knots[to - 1] - knots[from] < shortest) continue;
            Array.Fill(isFlat, true, from, to - from);
            from = to;
        }

        return isFlat;
    }
}
