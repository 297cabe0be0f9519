using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans.Checks;
using Forming.Plans.Drafts;
using Forming.Prediction;
using Forming.Results;
using Forming.Springback;

namespace Forming.Plans.Remedies;

/// <summary>
/// Finds, for every check that did not pass, a change to the job that passes it with no other check worse, by planning the changed job.
/// </summary>
/// <param name="job">What was asked.</param>
/// <param name="draft">What was worked out.</param>
/// <param name="checks">Its checks.</param>
/// <param name="cancellation">Cancels the calculation.</param>
internal sealed partial class RemedySearch(FormJob job, PlanDraft draft, IReadOnlyList<Check> checks, CancellationToken cancellation)
{
    /// <summary>No more jobs are planned for one check; a costly one counts as several.</summary>
    public const int MostTrialsPerCheck = 50;

    /// <summary>No more jobs are planned for one request.</summary>
    public const int MostTrials = 300;

    /// <summary>A trial that is pulled over in simulation weighs this many.</summary>
    private const int SimulatedWeight = 8;

    /// <summary>A trial of a curve whose radius changes weighs this many.</summary>
    private const int SeriesWeight = 2;

    /// <summary>A trial of such a curve weighs two more for this many folds.</summary>
    private const int FoldsPerWeight = 16;

    /// <summary>A trial of a curve whose radius changes by more than <see cref="UnevenRatio"/> weighs so many more.</summary>
    private const int UnevenWeight = 32;

    private const double UnevenRatio = 8;

    /// <summary>Fitting measured points once more weighs one more for this many of them.</summary>
    private const int PointsPerWeight = 25;

    /// <summary>A trial of a taper weighs this many.</summary>
    private const int TaperWeight = 6;

    /// <summary>A trial that is solved on the simulated pull weighs this many: eight of them a request.</summary>
    private const int SolvedWeight = MostTrials / MostSolves;

    private const int MostSolves = 8;

    /// <summary>Of what quick plans find for one check that is not of the pull, so many are solved.</summary>
    private const int MostSolvesPerCheck = 2;

    /// <summary>Single changes that cure a check and spoil another are mended by a second change for this many of them.</summary>
    private const int MostPairs = 4;

    /// <summary>Past the smallest change that cures, so many more are looked at for one that spoils nothing.</summary>
    private const int MostPastSmallest = 2;

    private readonly List<(IReadOnlyList<JobChange> Changes, bool IsSimulated, Trial? Outcome)> _tried = [];
    private readonly SortedDictionary<string, Remedy> _found = new(StringComparer.Ordinal);
    private readonly bool _isSimulated = job.Panel.Predict || IsSolved(job);
    private readonly PullWork _work = new(PullWork.MostOfTrials);
    private int _left;
    private int _solvesLeft;
    private bool _isOfPull;

    /// <summary>Jobs planned so far, simulated ones by their weight.</summary>
    public int Trials { get; private set; }

    /// <summary>The checks, those that did not pass with their remedies.</summary>
    /// <param name="needsRemedy">Which of those that did not pass are given one.</param>
    public IReadOnlyList<Check> ChecksWithRemedies(Func<Check, bool> needsRemedy)
    {
        var answered = checks.ToArray();
        var wanted = new List<int>();
        for (var i = 0; i < answered.Length; i++)
        {
            if (answered[i].Verdict == Verdict.Pass)
                continue;
            if (needsRemedy(answered[i]))
                wanted.Add(i);
            else if (answered[i].Remedy is not null)
                answered[i] = answered[i] with { Remedy = null };
        }

        // What fails is mended first, while there are trials left, and what needs most of them last.
        foreach (var i in wanted.OrderByDescending(i => answered[i].Verdict).ThenBy(i => IsOfSolvedPull(answered[i])))
            answered[i] = answered[i] with { Remedy = RemedyFor(answered[i]) };
        return answered;
    }

    private Remedy RemedyFor(Check check)
    {
        _isOfPull = IsOfSolvedPull(check);
        var remedy = (_isOfPull ? OfSolvedPull(check) : null) ?? SearchedFor(check);
        if (remedy.Changes.Count > 0)
            _found[check.Id] = remedy;
        return remedy;
    }

    // What cures one check may cure another: a simulated pull is best begun with what mends the lever, and for any other it is the last
    // resort.
    private IEnumerable<RemedyCandidate> CandidatesFor(Check check)
    {
        // Only a strip of the coil makes it surer, and no plan can bend one.
        if (check.Kind == CheckIds.Outlook)
            return [];
        var known = _found.Values.Select(remedy => RemedyCandidate.One(remedy.Text, [.. remedy.Changes]));
        var own = RemedyCandidates.For(job, draft, check);
        return IsOfPrediction(check.Id)
            ? _found.Where(other => other.Key is "lever" or "facet-width")
                .Select(other => RemedyCandidate.One(other.Value.Text, [.. other.Value.Changes])).Concat(own)
            : own.Concat(known);
    }

    private Remedy SearchedFor(Check check)
    {
        (_left, _solvesLeft) = (MostTrialsPerCheck, MostSolvesPerCheck);
        var spoiling = new List<(IReadOnlyList<JobChange> Changes, FormattableString Text, Trial Trial)>();
        foreach (var candidate in CandidatesFor(check))
        {
            if (Smallest(candidate, [], check.Id, check.Id) is not { } index)
                continue;
            for (var i = index; i <= Math.Min(index + MostPastSmallest, candidate.Count - 1); i++)
            {
                var changes = candidate.At(i);
                if (Try(changes, check.Id) is not { } trial || !trial.Passes(check.Id))
                    continue;
                if (Spoilt(trial).Count == 0 && IsConfirmed(changes, check.Id))
                    return new(candidate.TextAt(i), changes);
                if (i == index && Spoilt(trial).Count > 0)
                    spoiling.Add((changes, candidate.TextAt(i), trial));
            }
        }

        foreach (var (changes, text, trial) in spoiling.OrderBy(single => Spoilt(single.Trial).Count).Take(MostPairs))
        {
            if (Pair(check.Id, changes, text, trial) is { } pair)
                return pair;
        }

        return new(RemedyCandidates.None(draft, check), []);
    }

    // A second change that repairs what the first one broke.
    private Remedy? Pair(string id, IReadOnlyList<JobChange> first, FormattableString text, Trial trial)
    {
        var spoilt = Spoilt(trial)[0];
        var changed = job.With(first);
        var failed = trial.Checks.First(check => check.Id == spoilt && check.Verdict != Verdict.Pass);
        foreach (var candidate in RemedyCandidates.For(changed, trial.Draft, failed))
        {
            if (Smallest(candidate, first, id, spoilt) is not { } index)
                continue;
            for (var i = index; i <= Math.Min(index + MostPastSmallest, candidate.Count - 1); i++)
            {
                var both = Joined(first, candidate.At(i));
                if (Try(both, id) is { } second && second.Passes(id) && Spoilt(second).Count == 0 && IsConfirmed(both, id))
                    return new($"{text}; with it, {candidate.TextAt(i)}", both);
            }
        }

        return null;
    }

    private static IReadOnlyList<JobChange> Joined(IReadOnlyList<JobChange> first, IReadOnlyList<JobChange> second) =>
        [.. first.Where(change => !second.Any(later => later.Field == change.Field && later.Part == change.Part)), .. second];

    // The smallest change with which a check passes; one that a first change broke need only return to what it was.
    private int? Smallest(RemedyCandidate candidate, IReadOnlyList<JobChange> first, string id, string mended)
    {
        if (candidate.Count == 0)
            return null;
        var enough = id == mended ? Verdict.Pass : WorstOf(checks, mended);
        var steps = StepSearch.SmallestUpTo(
            candidate.Count,
            candidate.Start + 1,
            step => Try(Joined(first, candidate.At(step - 1)), id)?.WorstOf(mended) <= enough);
        return steps is { } found ? found - 1 : null;
    }

    private List<string> Spoilt(Trial trial) =>
        IsOutcomeKnown || _isOfPull
            ? SpoiltWithOutcome(trial)
            : SpoiltWithOutcome(trial).FindAll(id => !IsOfPrediction(id) && id != "outlook");

    private List<string> SpoiltWithOutcome(Trial trial)
    {
        var spoilt = new List<string>();
        foreach (var check in trial.Checks)
        {
            // A quick trial knows no outcome; its solved one does.
            var isWorse = check.Kind != CheckIds.Outcome && check.Verdict > WorstOf(checks, check.Id);
            if (isWorse && !spoilt.Contains(check.Id))
                spoilt.Add(check.Id);
        }

        spoilt.Sort(StringComparer.Ordinal);
        return spoilt;
    }

    // What was tried without its simulation is planned once more with it; where there is none either way, that plan is the same.
    private bool IsConfirmed(IReadOnlyList<JobChange> changes, string id) =>
        !_isSimulated || IsSimulatedFor(id) || changes.All(IsSeenByChecksOnly)
        || (!IsOutcomeKnown && !_isOfPull && !IsFollowed(changes))
        || (Try(changes, simulate: true) is { } trial && trial.Passes(id) && Spoilt(trial).Count == 0);

    private static bool IsSimulatedFor(string id) => IsOfPrediction(id);

    private static bool IsOfPrediction(string id) =>
        id is "wrap-order" or "facets-show" or "finished-sweep" or "finished-radius" or "finished-shape";

    private static bool IsSolved(FormJob job) => job.Panel.Springback is SolvedOnWrap;

    private Trial? Try(IReadOnlyList<JobChange> changes, string id) => Try(changes, IsSimulatedFor(id));

    private Trial? Try(IReadOnlyList<JobChange> changes, bool simulate)
    {
        foreach (var tried in _tried)
        {
            if (tried.IsSimulated == simulate && tried.Changes.SequenceEqual(changes))
                return tried.Outcome;
        }

        var changed = job.With(changes);
        if (changes.All(IsSeenByChecksOnly))
        {
            // A taper's lengths are used in place of widths.
            return Remembered(TrialOf(draft with
            {
                Job = changed with
                {
                    Panel = changed.Panel with { WidthMm = draft.Panel.WidthMm },
                    Form = changed.Form with { WidthMm = draft.Form.WidthMm },
                },
            }));
        }

        if (!simulate)
        {
            var springback = IsSolved(job) ? new PureBending(job.Panel.Springback.YieldMpa) : job.Panel.Springback;
            // Without the pull nothing is known of chances.
            var stepping = changed.Form.Stepping with { Confidence = Stepping.LeastConfidence };
            changed = changed with
            {
                Panel = changed.Panel with { Predict = false, Springback = springback },
                Form = changed.Form with { Stepping = stepping },
            };
        }

        if (!Takes(WeightOf(changed), IsSolved(changed)))
            return null;
        cancellation.ThrowIfCancellationRequested();
        try
        {
            var trial = TrialOf(PlanDraft.Of(changed, draft, _work, cancellation));
            // How sure a plan is that was not simulated says nothing of one that is.
            return Remembered(simulate || !IsSolved(job)
                ? trial
                : trial with { Checks = [.. trial.Checks.Where(check => check.Kind != CheckIds.Outlook)] });
        }
        catch (NoSolutionException)
        {
            return Remembered(null);
        }

        Trial? Remembered(Trial? outcome)
        {
            _tried.Add((changes, simulate, outcome));
            return outcome;
        }
    }

    private bool Takes(int weight, bool isSolve)
    {
        if (Trials + weight > MostTrials || (isSolve ? _solvesLeft < 1 : _left < weight))
            return false;
        _ = isSolve ? _solvesLeft-- : _left -= weight;
        Trials += weight;
        return true;
    }

    // A radius that opens far makes its series long.
    private bool IsUneven => draft.Finished!.GentlestRadiusMm > UnevenRatio * draft.Finished.TightestRadiusMm;

    // By what has to be worked out, never by the clock: the same request gets the same answer on any load.
    private int WeightOf(FormJob changed)
    {
        var series = 2 * draft.Stations.Count / FoldsPerWeight;
        if (IsSolved(changed))
            return SolvedWeight;
        if (draft.Taper is not null)
            return TaperWeight + series;
        if (_isSimulated && changed.Panel.Predict)
            return SimulatedWeight;
        if (Reuse.KeepsFolds(draft, changed))
            return 1;
        if (changed.Panel.Curve is PointsCurve measured && !Reuse.KeepsCurve(draft, changed.Panel))
            return SeriesWeight + series + (measured.Points.Count / PointsPerWeight);
        return draft.Finished!.Bends.All(bend => bend is ArcSpan) ? 1 : SeriesWeight + series + (IsUneven ? UnevenWeight : 0);
    }

    private static Trial TrialOf(PlanDraft changed) => new(changed, PlanChecks.Of(changed));

    // Fields that nothing but a check reads: with them the plan itself stays as it is.
    private bool IsSeenByChecksOnly(JobChange change) => change.Field is
        JobField.PullByPeople or JobField.PullByRated or JobField.BrakeLength or JobField.PanelGrain or JobField.FormGrain
        || (change.Field == JobField.ClampHeight && !draft.Panel.Mirrored)
        || (change.Field == JobField.FormBacking && !IsSolved(job));

    private static Verdict WorstOf(IReadOnlyList<Check> checks, string id)
    {
        var worst = Verdict.Pass;
        for (var i = 0; i < checks.Count; i++)
        {
            if (checks[i].Verdict > worst && checks[i].Id == id)
                worst = checks[i].Verdict;
        }

        return worst;
    }

    private sealed record Trial(PlanDraft Draft, IReadOnlyList<Check> Checks)
    {
        public bool Passes(string id) => WorstOf(id) == Verdict.Pass;

        public Verdict WorstOf(string id) => RemedySearch.WorstOf(Checks, id);
    }
}
