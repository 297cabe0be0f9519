
namespace Forming.Corrections;

/// <summary>A correction spread over all folds, where a few do not do: the least turns that bring sweep and radius in.</summary>
internal static class SpreadFolds
{
    private const int MostTurns = 8;

    /// <summary>Finds the best.</summary>
    /// <param name="folds">What each fold does alone.</param>
    /// <param name="trial">Pulls the panel over a corrected form.</param>
    /// <param name="asIs">The panel over the form as it stands.</param>
    /// <returns>The best correction found; the form as it stands where none is better.</returns>
    public static Tried Find(FoldResponses folds, CorrectionTrial trial, Tried asIs)
    {
        var best = asIs;
        // What folds do together differs from the sum of what they do alone; the difference is made up for turn by turn.
        var wanted = -1 * asIs.Off;
        for (var turn = 0; turn < MostTurns; turn++)
        {
            var steps = InSteps(folds, LeastTurns(folds, wanted));
            if (trial.Of(steps) is not { } tried)
            {
                wanted = 0.5 * wanted;
                continue;
            }

            if (tried.ShareOf(trial.Tolerance) < best.ShareOf(trial.Tolerance))
                best = tried;
            var next = wanted - tried.Off;
            if (turn > 0 && tried.ShareOf(trial.Tolerance) > 2 * best.ShareOf(trial.Tolerance))
                break;
            wanted = next;
        }

        return best;
    }

    // min Σx² with Ax = b, folds at their bounds left out and the rest solved again.
    private static double[] LeastTurns(FoldResponses folds, PanelOff wanted)
    {
        var steps = new double[folds.Count];
        var isFree = Enumerable.Range(0, folds.Count).Select(i => folds.Most(i) > folds.Least(i)).ToArray();
        var slopes = Enumerable.Range(0, folds.Count).Select(SlopeOf).ToArray();
        for (var round = 0; round <= folds.Count; round++)
        {
            double ss = 0, sr = 0, rr = 0;
            var (sweep, radius) = (wanted.Sweep, wanted.LnRadius);
            for (var i = 0; i < slopes.Length; i++)
            {
                var (a, b) = (slopes[i].Sweep, slopes[i].LnRadius);
                if (!isFree[i])
                {
                    sweep -= a * steps[i];
                    radius -= b * steps[i];
                    continue;
                }

                (ss, sr, rr) = (ss + (a * a), sr + (a * b), rr + (b * b));
            }

            var determinant = (ss * rr) - (sr * sr);
            // Where no fold moves the radius by itself, the sweep alone is brought in.
            var hasBoth = determinant > 1e-9 * ss * rr;
            if (!(ss > 0))
                break;
            var (p, q) = hasBoth
                ? (((rr * sweep) - (sr * radius)) / determinant, ((ss * radius) - (sr * sweep)) / determinant)
                : (sweep / ss, 0);
            var isWithin = true;
            for (var i = 0; i < slopes.Length; i++)
            {
                if (!isFree[i])
                    continue;
                var step = (p * slopes[i].Sweep) + (q * slopes[i].LnRadius);
                steps[i] = Math.Clamp(step, folds.Least(i), folds.Most(i));
                if (steps[i] != step)
                    isFree[i] = isWithin = false;
            }

            if (isWithin)
                break;
        }

        return steps;

        PanelOff SlopeOf(int fold) => folds.Most(fold) > 0
            ? 1.0 / folds.Most(fold) * folds.At(fold, folds.Most(fold))
            : folds.Least(fold) < 0 ? 1.0 / folds.Least(fold) * folds.At(fold, folds.Least(fold)) : default;
    }

    // Rounded so that what is left over goes to the next fold.
    private static int[] InSteps(FoldResponses folds, double[] wanted)
    {
        var steps = new int[wanted.Length];
        double over = 0;
        for (var i = 0; i < steps.Length; i++)
        {
            if (folds.Most(i) == folds.Least(i))
                continue;
            steps[i] = Math.Clamp((int)Math.Round(wanted[i] + over), folds.Least(i), folds.Most(i));
            over = Math.Clamp(over + wanted[i] - steps[i], -0.5, 0.5);
        }

        return steps;
    }
}
