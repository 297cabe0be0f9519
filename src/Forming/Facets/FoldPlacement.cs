using Forming.Contact;
using Forming.Folds;

namespace Forming.Facets;

/// <summary>Puts the folds on one curved stretch: the smallest count that keeps every facet within what is allowed.</summary>
internal sealed class FoldPlacement(
    Stepping stepping, CurvedRun run, FoldShape fold, FacetJudge judge, FoldDensity density, double minFacet, double markResolution,
    CancellationToken cancellation)
{
    /// <summary>The folds with the smallest number of steps that is smooth, or the largest that the brake can fold.</summary>
    /// <returns>The folds; null where the finish asks for more than any plan folds.</returns>
    public FormPolygon? Fewest()
    {
        if (StepSearch.SmallestUpTo(StepSearch.MostSteps, Guess(), steps => IsSmooth(WithSteps(steps))) is not { } fewest)
            return null;
        var smooth = WithSteps(fewest);
        if (!IsFoldable(smooth))
            return WithSteps(StepSearch.Largest(fewest, fewer => IsFoldable(WithSteps(fewer))));
        if (!run.IsUneven)
            return smooth;

        var forGood = WithSteps(
            StepSearch.SmallestForGood(fewest, steps => WithSteps(steps) is var folded && (IsSmooth(folded) || !IsFoldable(folded))));
        return IsFoldable(forGood) ? forGood : smooth;
    }

    /// <summary>The folds with a given number of steps.</summary>
    /// <param name="steps">Steps N of the running integral, &gt; 0.</param>
    public FormPolygon WithSteps(int steps) => Evened(StepSearch.Spread(stepping.Ends, steps, density.Total), null);

    /// <summary>The folds at a given step of the running integral, with as many steps as come nearest to the whole.</summary>
    /// <param name="step">The step: radians or mm, by the rule.</param>
    /// <param name="folds">Number of folds, where it is known.</param>
    public FormPolygon WithStep(double step, int? folds)
    {
        if (folds is { } known)
        {
            var given = stepping.Ends == SteppingEnds.Half ? known - 1 : known;
            return Evened(StepSearch.Spread(stepping.Ends, given, given * step), step);
        }

        // Past an end that stays flat under load there is no curve to go on along.
        var steps = Math.Max(
            1, density.At(density.Total).State.Curvature > 0 ? Math.Round(density.Total / step) : Math.Floor(density.Total / step));
        if (steps * step > density.Total && density.At(density.Total).State.Curvature == 0)
            throw StepSearch.TooCoarse();
        return steps <= StepSearch.MostSteps
            ? Evened(StepSearch.Spread(stepping.Ends, (int)steps, steps * step), step)
            : throw StepSearch.TooMany();
    }

    /// <summary>Whether every facet of a polygon on this stretch passes the finish.</summary>
    /// <param name="folded">The polygon.</param>
    public bool IsSmooth(FormPolygon folded)
    {
        if (folded.Facets.Length == 0)
            return false; // a single fold leaves nothing to wrap over
        for (var j = 0; j < folded.Angles.Length; j++)
        {
            if (!(folded.Angles[j] <= StepSearch.MostChosenAngle))
                return false;
        }

        for (var j = 0; j < folded.Facets.Length; j++)
        {
            if (folded.Facets[j] > (stepping.MaxFacetMm ?? double.PositiveInfinity))
                return false;
            var tightest = run.TightestBetween(folded.Places[j], folded.Places[j + 1]);
            if (!judge.RippleOf(folded.Facets[j], folded.Places[j], tightest, j == 0).Passes(judge.Finish))
                return false;
        }

        return true;
    }

    private bool IsFoldable(FormPolygon folded) => folded.Facets.All(facet => facet >= minFacet);

    private double Guess()
    {
        var start = density.At(0);
        var end = density.At(density.Total);
        var allowed = Math.Min(judge.AllowedFacet(start, start.State, isFirst: true), judge.AllowedFacet(end, end.State, isFirst: false));
        var contact = CurveMeasure.ParallelLength(judge.Law.ThicknessMm / 2);
        return Math.Ceiling(run.Total(contact) / Math.Min(allowed, stepping.MaxFacetMm ?? allowed));
    }

    // Equal spacing is meant on the flat, where fold allowances count too: the places are moved until the marks cannot show a difference.
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
        cancellation.ThrowIfCancellationRequested();
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
