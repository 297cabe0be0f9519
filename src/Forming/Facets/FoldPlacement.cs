using Forming.Contact;
using Forming.Layout;
using Forming.Results;

namespace Forming.Facets;

/// <summary>Puts the folds on one curved stretch: the smallest count that keeps every facet within what is allowed.</summary>
internal sealed class FoldPlacement(
    Stepping stepping, CurvedRun run, FoldShape fold, FacetJudge judge, FoldDensity density, double minFacet, double markResolution)
{
    /// <summary>No plan folds more often than this on one stretch.</summary>
    public const int MostSteps = 1000;

    /// <summary>Where the plan chooses, no fold turns further: the wrap model was studied to this angle.</summary>
    private const double MostFoldAngle = Math.PI / 4;

    /// <summary>The folds with the smallest number of steps that is smooth, or the largest that the brake can fold.</summary>
    public FormPolygon Fewest()
    {
        var steps = StepsWanted();
        var smooth = WithSteps(steps);
        return IsFoldable(smooth) ? smooth : WithSteps(MostFoldable(steps));
    }

    /// <summary>How many steps the finish asks for, whatever the brake can fold.</summary>
    public int StepsWanted() => SmallestThat(IsSmooth);

    /// <summary>The folds with a given number of steps.</summary>
    /// <param name="steps">Steps N of the running integral, &gt; 0.</param>
    public FormPolygon WithSteps(int steps) => Evened(Spread(steps, density.Total), null);

    /// <summary>The folds at a given step of the running integral, with as many steps as come nearest to the whole.</summary>
    /// <param name="step">The step: radians or mm, by the rule.</param>
    public FormPolygon WithStep(double step)
    {
        var steps = Math.Max(1, Math.Round(density.Total / step));
        return steps <= MostSteps ? Evened(Spread((int)steps, steps * step), step) : throw TooMany();
    }

    private static NoSolutionException TooMany() => new(
        "stepping.too-many-folds",
        "form.stepping",
        $"more than {MostSteps} folds on one curved stretch would be needed",
        $"wider facets, a plainer finish or a tighter curve");

    private bool IsFoldable(FormPolygon folded) => folded.Facets.All(facet => facet >= minFacet);

    private bool IsSmooth(FormPolygon folded)
    {
        for (var j = 0; j < folded.Angles.Length; j++)
        {
            if (!(folded.Angles[j] <= MostFoldAngle))
                return false;
        }

        for (var j = 0; j < folded.Facets.Length; j++)
        {
            if (folded.Facets[j] > (stepping.MaxFacetMm ?? double.PositiveInfinity))
                return false;
            if (!judge.RippleOf(folded.Facets[j], folded.Places[j], folded.Places[j + 1], j == 0).Passes(judge.Finish))
                return false;
        }

        return true;
    }

    // Gallops from a guess to a pair of neighbours of which the larger passes and the smaller does not.
    private int SmallestThat(Func<FormPolygon, bool> passes)
    {
        var guess = Math.Clamp(Guess(), 1, MostSteps);
        int fails = 0, does = 0, stride = 1;
        for (var steps = guess; does == 0 || (fails == 0 && does > 1);)
        {
            if (passes(WithSteps(steps)))
            {
                does = steps;
                if (fails > 0)
                    break;
                steps = Math.Max(1, steps - stride);
            }
            else
            {
                fails = steps;
                if (does > 0)
                    break;
                if (steps == MostSteps)
                    throw TooMany();
                steps = Math.Min(MostSteps, steps + stride);
            }

            stride *= 2;
        }

        while (does - fails > 1)
        {
            var middle = (does + fails) / 2;
            if (passes(WithSteps(middle)))
                does = middle;
            else
                fails = middle;
        }

        return does;
    }

    private int Guess()
    {
        var start = density.At(0);
        var end = density.At(density.Total);
        var allowed = Math.Min(judge.AllowedFacet(start, start, isFirst: true), judge.AllowedFacet(end, end, isFirst: false));
        var contact = Measure.ParallelLength(judge.Law.ThicknessMm / 2);
        var guess = Math.Ceiling(run.Total(contact) / Math.Min(allowed, stepping.MaxFacetMm ?? allowed));
        return (int)Math.Clamp(guess, 1, MostSteps);
    }

    private int MostFoldable(int steps)
    {
        int folds = 1, tooMany = steps;
        while (tooMany - folds > 1)
        {
            var middle = (folds + tooMany) / 2;
            if (IsFoldable(WithSteps(middle)))
                folds = middle;
            else
                tooMany = middle;
        }

        return folds;
    }

    private double[] Spread(int steps, double total)
    {
        if (stepping.Ends == SteppingEnds.Half)
        {
            var values = new double[steps + 1];
            for (var j = 0; j <= steps; j++)
                values[j] = total * j / steps;
            return values;
        }

        var between = new double[steps];
        for (var j = 0; j < steps; j++)
            between[j] = total * (j + 0.5) / steps;
        return between;
    }

    // Equal spacing is meant on the flat, where fold allowances count too: the places are moved until the marks cannot tell.
    private FormPolygon Evened(double[] values, double? fixedStep)
    {
        var folded = Through(values, fixedStep);
        if (stepping.Rule != SteppingRule.EqualSpacing)
            return folded;
        var last = fixedStep is null ? values.Length - 1 : values.Length;
        for (var i = 0; i < 30; i++)
        {
            var spacings = folded.Spacings(fold);
            if (spacings.Length < 1 || IsEven(spacings, fixedStep))
                break;
            var step = fixedStep ?? spacings.Average();
            var along = 0.0;
            for (var j = 1; j < last; j++)
            {
                along += spacings[j - 1];
                values[j] += (step * j) - along;
            }

            folded = Through(values, fixedStep);
        }

        return folded;
    }

    private bool IsEven(double[] spacings, double? fixedStep)
    {
        double least = fixedStep ?? double.PositiveInfinity, most = fixedStep ?? 0;
        foreach (var spacing in spacings)
            (least, most) = (Math.Min(least, spacing), Math.Max(most, spacing));
        return most - least <= markResolution;
    }

    private FormPolygon Through(double[] values, double? fixedStep)
    {
        var places = new ContactPoint[values.Length];
        for (var j = 0; j < places.Length; j++)
            places[j] = density.At(values[j]);
        var endTurn = fixedStep switch
        {
            null => run.End.Turn,
            { } when stepping.Ends == SteppingEnds.Half => places[^1].Turn,
            { } step => density.At(values[^1] + (step / 2)).Turn,
        };
        return FormPolygon.Through(places, run.Start.Turn, endTurn, fold);
    }
}
