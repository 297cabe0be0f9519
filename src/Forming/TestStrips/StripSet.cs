using Forming.Facets;
using Forming.Jobs;
using Forming.Learning;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Results;

namespace Forming.TestStrips;

/// <summary>Strips with what each of them does, and what was read on them.</summary>
internal sealed class StripSet
{
    private StripSet(SpringbackQuestion question, StripPull?[] pulls)
    {
        Pulls = pulls;
        Readings = [.. Enumerable.Range(0, pulls.Length).SelectMany(i => ReadingsOf(question, i, pulls[i]))];
        SharedErrors = [.. SharedOf(question, Readings)];
    }

    /// <summary>What each strip does; null where its pull cannot be followed.</summary>
    public IReadOnlyList<StripPull?> Pulls { get; }

    /// <summary>What was read on the strips that can be followed.</summary>
    public IReadOnlyList<StripReading> Readings { get; }

    /// <summary>What one standard deviation of a form's folds adds to each reading over it.</summary>
    public IReadOnlyList<IReadOnlyList<double>> SharedErrors { get; }

    /// <summary>Pulls the strips, one pull for all that are alike.</summary>
    /// <param name="question">The strips.</param>
    /// <param name="hardeningStep">How far n is varied, as ln(n).</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>strips.not-followed</c>: no strip can be followed.</exception>
    public static StripSet Of(SpringbackQuestion question, double hardeningStep, CancellationToken cancellation)
    {
        var strips = question.Strips;
        var work = new PullWork(PullWork.Most / 2);
        var pulls = new StripPull?[strips.Count];
        for (var i = 0; i < strips.Count; i++)
        {
            var strip = strips[i];
            var sheet = question.Sheet with { ThicknessMm = strip.ThicknessMm };
            if (strip.Over is not FacetedBar bar)
            {
                pulls[i] = StripPull.Round(sheet, ((RoundBar)strip.Over).RadiusMm, strip.WidthMm);
                continue;
            }

            bar.RefuseShortFacets(i);
            var like = Enumerable.Range(0, i).Where(j => IsLike(strips[j], strip)).DefaultIfEmpty(-1).First();
            pulls[i] = like >= 0
                ? pulls[like]
                : StripPull.Over(sheet, bar, strip.WidthMm, hardeningStep, new(PullWork.MostOfSolving, work), cancellation);
        }

        if (Array.TrueForAll(pulls, pull => pull is null))
            throw NotFollowed(work.IsSpent);
        return new(question, pulls);
    }

    private static bool IsLike(SpringbackStrip one, SpringbackStrip other) =>
        one.ThicknessMm == other.ThicknessMm
        && one.WidthMm == other.WidthMm
        && one.Over is FacetedBar bar
        && bar.IsLike((FacetedBar)other.Over);

    private static NoSolutionException NotFollowed(bool isSpent) => isSpent
        ? new(
            "strips.too-much-work",
            "strips",
            $"pulling these strips over their forms takes more work than one request may",
            $"fewer different forms in one request, or strips round a bar")
        : new(
            "strips.not-followed",
            "strips",
            $"no strip's pull over its form can be followed: the hand meets the form first, or the free side curls up",
            $"another lever, a form with more of a bend, or a strip round a bar");

    private static IEnumerable<StripReading> ReadingsOf(SpringbackQuestion question, int i, StripPull? pull)
    {
        if (pull is null)
            yield break;
        var strip = question.Strips[i];
        var (byRadius, bySweep) = FoldErrorsOf(question, strip, pull);
        if (strip.FinishedRadiusMm is { } radius)
        {
            var finished = 1 / (radius + (strip.ThicknessMm / 2));
            yield return new(i, pull, Math.Log(pull.LoadedCurvature / finished), question.ReadingError, byRadius, IsSweep: false);
        }

        if (strip.FinishedSweep is { } sweep)
            yield return new(i, pull, sweep.Radians, question.SweepError.Radians, bySweep, IsSweep: true);
    }

    private static (double OfRadius, double OfSweep) FoldErrorsOf(SpringbackQuestion question, SpringbackStrip strip, StripPull pull)
    {
        if (strip.Over is not FacetedBar bar || question.FoldError.Radians == 0)
            return (0, 0);
        var scatter = new Scatter(0, 0, 0, question.FoldError, 0);
        var curvature = strip.FinishedRadiusMm is { } radius ? 1 / (radius + (strip.ThicknessMm / 2)) : 0;
        var folds = FoldErrors.Of(bar.Form, scatter, pull.Law, pull.LoadedCurvature, curvature, [], Finish.Satin).First().First;
        return (folds.LnRadius, folds.Sweep);
    }

    // One error of each form for its radii, one for its sweeps: most of what a radius moves by is not in the sum of the folds.
    private static IEnumerable<double[]> SharedOf(SpringbackQuestion question, IReadOnlyList<StripReading> readings)
    {
        var left = readings.Where(reading => reading.FoldHalf > 0).ToList();
        while (left.Count > 0)
        {
            var first = left[0];
            var bar = (FacetedBar)question.Strips[first.Strip].Over;
            var alike = left.Where(reading =>
                reading.IsSweep == first.IsSweep && bar.IsLike((FacetedBar)question.Strips[reading.Strip].Over)).ToHashSet();
            left.RemoveAll(alike.Contains);
            yield return [.. readings.Select(reading => alike.Contains(reading) ? reading.FoldHalf / YieldPosterior.TwoSided : 0)];
        }
    }
}
