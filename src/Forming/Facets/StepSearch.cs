using Forming.Results;

namespace Forming.Facets;

/// <summary>Finds how many steps a stretch needs, and where its folds are on the running integral of their density.</summary>
internal static class StepSearch
{
    /// <summary>No plan folds more often than this on one stretch.</summary>
    public const int MostSteps = 1000;

    private const int LeastLookedOver = 3;

    private const int MostLookedOver = 12;
    /// <summary>No form has more folds than this on all its stretches: whatever reads, checks or draws a plan counts on it.</summary>
    public const int MostFolds = MostSteps + 1;

    /// <summary>Where the plan chooses, no fold turns further [rad]: the wrap model was studied to this angle.</summary>
    public const double MostChosenAngle = Math.PI / 4;

    /// <summary>No fold turns further [rad], whoever chose it.</summary>
    public const double MostAngle = 150 * Math.PI / 180;

    /// <summary>Smallest number of steps that passes, where more steps never pass worse.</summary>
    /// <param name="guess">Where to begin.</param>
    /// <param name="passes">Whether a number of steps passes.</param>
    /// <exception cref="NoSolutionException"><c>stepping.too-many-folds</c>.</exception>
    public static int Smallest(double guess, Func<int, bool> passes) => SmallestUpTo(MostSteps, guess, passes) ?? throw TooMany();

    /// <summary>Smallest number of steps that passes, where more steps never pass worse; null where none does.</summary>
    /// <param name="most">The largest number to try.</param>
    /// <param name="guess">Where to begin.</param>
    /// <param name="passes">Whether a number of steps passes.</param>
    public static int? SmallestUpTo(int most, double guess, Func<int, bool> passes)
    {
        // Gallops from the guess to a pair of numbers of which the larger passes and the smaller does not, then halves between.
        int fails = 0, does = 0, stride = 1;
        for (var steps = guess >= 1 ? (int)Math.Min(guess, most) : 1; does == 0 || (fails == 0 && does > 1); stride *= 2)
        {
            if (passes(steps))
            {
                does = steps;
                steps = fails > 0 ? steps : Math.Max(1, steps - stride);
            }
            else
            {
                fails = steps;
                if (does == 0 && steps == most)
                    return null;
                steps = does > 0 ? steps : Math.Min(most, steps + stride);
            }

            if (fails > 0 && does > 0)
                break;
        }

        while (does - fails > 1)
        {
            var middle = (does + fails) / 2;
            if (passes(middle))
                does = middle;
            else
                fails = middle;
        }

        return does;
    }

    /// <summary>Smallest number of steps from which on every number passes, where more steps may now and then pass worse.</summary>
    /// <param name="does">A number that passes while the one before does not.</param>
    /// <param name="passes">Whether a number of steps passes.</param>
    /// <remarks>
    /// Where the curvature jumps, whether a wide facet reaches over the jump is a matter of how the folds happen to fall; that comes
    /// round again within a few steps more, so no further is looked.
    /// </remarks>
    public static int SmallestForGood(int does, Func<int, bool> passes)
    {
        var found = does;
        for (var steps = does + 1; steps <= Math.Min(MostSteps, found + Math.Clamp(found / 4, LeastLookedOver, MostLookedOver)); steps++)
        {
            if (!passes(steps))
                found = steps + 1;
        }

        return found <= MostSteps ? found : does;
    }

    /// <summary>Largest number of steps below another that passes, where fewer steps never pass worse; 1 if none does.</summary>
    /// <param name="tooMany">A number that does not pass.</param>
    /// <param name="passes">Whether a number of steps passes.</param>
    public static int Largest(int tooMany, Func<int, bool> passes)
    {
        var does = 1;
        while (tooMany - does > 1)
        {
            var middle = (does + tooMany) / 2;
            if (passes(middle))
                does = middle;
            else
                tooMany = middle;
        }

        return does;
    }

    /// <summary>Where the folds are: 0, 1, 2 … N of N with half ends, ½, 1½ … with full ends.</summary>
    /// <param name="ends">Half or full.</param>
    /// <param name="steps">N.</param>
    /// <param name="total">The running integral over the whole stretch.</param>
    public static double[] Spread(SteppingEnds ends, int steps, double total)
    {
        var values = new double[ends == SteppingEnds.Half ? steps + 1 : steps];
        var first = ends == SteppingEnds.Half ? 0 : 0.5;
        for (var j = 0; j < values.Length; j++)
            values[j] = total * (j + first) / steps;
        return values;
    }

    /// <summary>What says that no count will do.</summary>
    public static NoSolutionException TooMany() => new(
        "stepping.too-many-folds",
        "form.stepping",
        $"more than {MostSteps} folds on one curved stretch would be needed",
        $"wider facets, a plainer finish or a tighter curve");

    /// <summary>What says that all stretches together would need too many.</summary>
    public static NoSolutionException TooManyInAll() => new(
        "stepping.too-many-folds",
        "form.stepping",
        $"more than {MostFolds} folds on all curved stretches together would be needed",
        $"wider facets, a plainer finish or fewer curved stretches");

    /// <summary>What says that a fixed step is larger than a whole stretch that ends flat.</summary>
    public static NoSolutionException TooCoarse() => new(
        "stepping.step-too-coarse",
        "form.stepping",
        $"one fixed step is more than the whole curve, which ends flat and cannot be continued",
        $"a smaller angle or spacing, or none fixed");

    /// <summary>What says that a fold would turn too far.</summary>
    /// <param name="angle">How far [rad].</param>
    public static NoSolutionException TooSharp(double angle) => new(
        "stepping.fold-too-sharp",
        "form.stepping",
        $"a single fold would have to turn {Figure.Angle(angle)}",
        $"more folds: none may turn more than {Figure.Angle(MostAngle)}");
}
