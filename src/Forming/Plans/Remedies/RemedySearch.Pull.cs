using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans.Drafts;
using Forming.Results;
using Forming.Wrapping;

namespace Forming.Plans.Remedies;

/// <summary>What cures a check of a pull that plans are solved on.</summary>
/// <remarks>
/// A solve costs what a thousand quick plans do. So a row of changes is gone through by single pulls first, and only the smallest that
/// can be followed, or a little more, is solved.
/// </remarks>
internal sealed partial class RemedySearch
{
    /// <summary>A single pull that is only to be followed weighs this many.</summary>
    private const int FollowedWeight = 3;

    /// <summary>Of one row of changes so many are solved.</summary>
    private const int MostSolvedOfRow = 3;

    /// <summary>From one that is solved to the next goes this part of the rest of the row.</summary>
    private const int ShareOfRow = 4;

    /// <summary>What a change spoils is mended by so many more.</summary>
    private const int MostMends = 3;

    private readonly List<(IReadOnlyList<JobChange> Changes, bool IsFollowed)> _followed = [];

    // Where the panel is not followed, three checks say so in their own ways, and one change cures them all.
    private bool IsOfSolvedPull(Check check) =>
        draft.Taper is null && IsSolved(job) && check.Verdict < Verdict.Fail
        && (IsOfPrediction(check.Id) || (!IsInOrder && check.Id is "wrap-solver" or "lever" or "facet-width"));

    // Where the first plan's panel is not followed, nothing is known of what comes off, and what is not known cannot get worse.
    private bool IsOutcomeKnown => !IsSolved(job) || draft.Prediction is null or { Wraps: true };

    private bool IsInOrder => draft.Solution is { Prediction.LandsInOrder: true };

    private Remedy? OfSolvedPull(Check check)
    {
        (_left, _solvesLeft) = (MostTrials, MostSolves);
        foreach (var known in _found.Values)
        {
            if (_tried.Find(tried => tried.IsSimulated && tried.Changes.SequenceEqual(known.Changes)).Outcome is { } trial
                && trial.Passes(check.Id))
                return known;
        }

        foreach (var row in new PullChanges(job, draft).For(check))
        {
            if (FirstOf(row) is not { } first)
                continue;
            foreach (var i in (int[])[.. From(first, row.Count - 1).Distinct()])
            {
                if (Cured(check.Id, row.At(i), row.TextAt(i)) is { } remedy)
                    return remedy;
            }
        }

        return null;
    }

    // The smallest change that is followed is often just not enough.
    private static IEnumerable<int> From(int first, int last) =>
        Enumerable.Range(0, MostSolvedOfRow).Select(k => first + (k * (last - first) / ShareOfRow));

    // The smallest change with which the panel is followed in order; a plan that is followed already begins with the guess.
    private int? FirstOf(RemedyCandidate row)
    {
        if (row.Count == 0)
            return null;
        if (IsInOrder)
            return IsFollowed(row.At(row.Start)) ? row.Start : null;
        int not = -1, does = row.Count;
        foreach (var i in (int[])[row.Count - 1, 2 * row.Count / 3, row.Count / 3])
        {
            if (i < does && IsFollowed(row.At(i)))
            {
                does = i;
                break;
            }
        }

        if (does == row.Count)
            return null;
        while (does - not > 1)
        {
            var middle = (does + not) / 2;
            if (IsFollowed(row.At(middle)))
                does = middle;
            else
                not = middle;
        }

        return does;
    }

    private bool IsFollowed(IReadOnlyList<JobChange> changes)
    {
        foreach (var known in _followed)
        {
            if (known.Changes.SequenceEqual(changes))
                return known.IsFollowed;
        }

        if (!Takes(FollowedWeight, isSolve: false))
            return false;
        cancellation.ThrowIfCancellationRequested();
        var isFollowed = false;
        try
        {
            var changed = job.With(changes);
            isFollowed = FirstPull.Of(changed, PlanDraft.FoldOf(changed.Form), _work, cancellation) is { LandsInOrder: true };
        }
        catch (NoSolutionException)
        {
            // There is no such form.
        }

        _followed.Add((changes, isFollowed));
        return isFollowed;
    }

    // Mended by quick plans as far as those see what a change spoils, then solved.
    private Remedy? Cured(string id, IReadOnlyList<JobChange> changes, FormattableString text)
    {
        if (Try(changes, simulate: false) is not { } quick || Mended(changes, text, quick) is not { } mended)
            return null;
        if (Try(mended.Changes, simulate: true) is not { } trial || !trial.Passes(id))
            return null;
        if (SpoiltWithOutcome(trial).Count == 0)
            return mended;
        return Mended(mended.Changes, mended.Text, trial) is { } again && again.Changes.Count > mended.Changes.Count
            && Try(again.Changes, simulate: true) is { } second && second.Passes(id) && SpoiltWithOutcome(second).Count == 0
                ? again
                : null;
    }

    private Remedy? Mended(IReadOnlyList<JobChange> changes, FormattableString text, Trial trial)
    {
        for (var i = 0; SpoiltBesidePull(trial) is [var id, ..]; i++)
        {
            if (i == MostMends || Mend(changes, trial, id) is not { } mend)
                return null;
            (changes, text, trial) = (Joined(changes, mend.Remedy.Changes), $"{text}; with it, {mend.Remedy.Text}", mend.Trial);
        }

        return new(text, changes);
    }

    private (Remedy Remedy, Trial Trial)? Mend(IReadOnlyList<JobChange> changes, Trial trial, string id)
    {
        var failed = trial.Checks.First(check => check.Id == id && check.Verdict > WorstOf(checks, id));
        foreach (var candidate in RemedyCandidates.For(job.With(changes), trial.Draft, failed))
        {
            if (candidate.Count == 0)
                continue;
            var step = StepSearch.SmallestUpTo(
                candidate.Count,
                candidate.Start + 1,
                step => Try(Joined(changes, candidate.At(step - 1)), simulate: false)?.WorstOf(id) <= WorstOf(checks, id));
            if (step is { } found
                && Try(Joined(changes, candidate.At(found - 1)), simulate: false) is { } next
                && SpoiltBesidePull(next).Count < SpoiltBesidePull(trial).Count)
                return (new(candidate.TextAt(found - 1), candidate.At(found - 1)), next);
        }

        return null;
    }

    private List<string> SpoiltBesidePull(Trial trial) =>
        SpoiltWithOutcome(trial).FindAll(id => !IsOfPrediction(id) && id is not ("wrap-solver" or "lever" or "facet-width"));
}
