using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Wrapping;

/// <summary>The fewest folds whose predicted ripple passes the finish, searched around the closed form's count.</summary>
internal sealed class FoldRefinement(FinishedCurve finished, FormJob job, FoldShape fold, PullWork? whole, CancellationToken cancellation)
{
    /// <summary>
    /// The search goes up to this many times the closed form's count, and at least <see cref="LeastRoom"/> folds past it.
    /// </summary>
    private const int MostTimes = 2;

    private const int LeastRoom = 16;

    /// <summary>Beyond this many folds a single pull is slow to follow, and a search over many is not waited for.</summary>
    private const int MostFolds = 250;

    private readonly PullWork _work = PullWork.PartOf(whole);

    private readonly Dictionary<int, (WrappedForm Form, PanelPrediction Prediction)?> _tried = [];

    /// <summary>Refines a form.</summary>
    /// <param name="closed">The form by the closed form.</param>
    /// <returns>The form to make, its prediction where one was made, and the result.</returns>
    public (WrappedForm Form, PanelPrediction? Prediction, SteppingRefinement Report) Of(WrappedForm closed)
    {
        var count = CountOf(closed);
        if (PrintThroughReport.Of(closed) is { Known: false, WhyUnknown: var why })
            return Kept($"print-through is not known: {why}");
        if (count > MostFolds)
            return Kept($"more than {MostFolds} folds are not searched");

        var most = Math.Min(MostFolds, Math.Max(MostTimes * count, count + LeastRoom));
        var own = PlannedPull.Predict(closed, job, fold, PullWork.PartOf(whole), cancellation);
        _tried[count] = Passes(closed, own) ? (closed, own) : FirstThatPasses(count);
        var found = StepSearch.SmallestUpTo(most, count, DoesPass);
        if (_work.IsSpent)
            return (closed, own, new(count, count, "the search gave up: following the pulls over other counts takes more work than one search may"));
        return found is { } fewest
            ? (_tried[fewest]!.Value.Form, _tried[fewest]!.Value.Prediction, new(count, fewest, null))
            : (closed, own, new(count, count, FormattableString.Invariant($"no count up to {most} folds that this brake can fold passes the finish by its predicted ripple")));

        (WrappedForm, PanelPrediction?, SteppingRefinement) Kept(string reason) => (closed, null, new(count, count, reason));
    }

    private bool DoesPass(int count)
    {
        if (!_tried.TryGetValue(count, out var found))
            _tried[count] = found = FirstThatPasses(count);
        return found is not null;
    }

    private (WrappedForm Form, PanelPrediction Prediction)? FirstThatPasses(int count)
    {
        foreach (var rule in PlacedFolds.RulesFor(SteppingRule.FewestFolds))
        {
            cancellation.ThrowIfCancellationRequested();
            var candidate =
                job with { Form = job.Form with { Stepping = job.Form.Stepping with { Rule = rule, Folds = count, Refine = false } } };
            try
            {
                var wrapped = WrappedForm.Solve(finished, candidate, fold, cancellation);
                if (!IsFoldable(wrapped))
                    continue;
                var prediction = PlannedPull.Predict(wrapped, candidate, fold, _work, cancellation);
                if (Passes(wrapped, prediction))
                    return (wrapped, prediction);
            }
            catch (NoSolutionException)
            {
                // This count folds too sharply, or serves too few stretches: it does not pass.
            }
        }

        return null;
    }

    private bool Passes(WrappedForm wrapped, PanelPrediction prediction) => IsFoldable(wrapped) && prediction.Passes(job.Panel.Finish);

    private bool IsFoldable(WrappedForm wrapped) => wrapped.Folds.IsFoldable(job.Brake.MinFacetMm, job.Form.Stepping.MaxFacetMm);

    private static int CountOf(WrappedForm wrapped) => wrapped.Folds.Polygon.Angles.Length;
}
