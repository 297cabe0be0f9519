using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans.Drafts;

namespace Forming.Plans.Remedies;

/// <summary>Rows of changes that may let a panel be followed over its form, or come off nearer to what is wanted.</summary>
/// <param name="job">What was asked.</param>
/// <param name="draft">What was worked out.</param>
internal sealed class PullChanges(FormJob job, PlanDraft draft)
{
    /// <summary>No further than this from what was asked: assumptions of what still is the same job.</summary>
    private const double MostThicker = 2.5;

    /// <inheritdoc cref="MostThicker"/>
    private const double LeastSweep = 0.3;

    /// <inheritdoc cref="MostThicker"/>
    private const double LeastRadius = 0.35;

    /// <inheritdoc cref="MostThicker"/>
    private const double Longer = 1.5;

    private readonly ChangeWords _words = new(job, draft);
    private readonly SingleChanges _change = new(job, draft);

    /// <summary>The rows for a check, the most practical first.</summary>
    /// <param name="check">The check that did not pass.</param>
    public IEnumerable<RemedyCandidate> For(Check check)
    {
        var folds = draft.Stations.Count;
        if (check.Kind == CheckIds.FacetsShow)
        {
            yield return Folds((int)Math.Ceiling(folds * Math.Sqrt(Math.Max(1, check.Value ?? 1))) + 1);
            yield return _change.AcceptRipple(draft.Prediction?.Ripple.HeightMm, draft.Prediction?.Ripple.Slope);
        }
        else if (draft.Solution is { Prediction.LandsInOrder: true })
        {
            yield return Folds(folds + 2);
        }

        var free = AsThePlanChooses();
        foreach (var row in free)
            yield return row;
        if (free.Count > 1)
            yield return All(free);
        if (draft.Panel.LeverMm is null && draft.Judge.LeverMm >= draft.Panel.LeadOutMm)
            yield return LongerLeadOut();
        yield return TurnedRound();
        foreach (var row in OtherPanels())
            yield return row;
        if (free.Count == 0)
            yield break;
        var all = All(free);
        foreach (var row in OtherPanels())
            yield return row with { At = i => [.. row.At(i), .. all.At(0)], TextAt = i => $"{row.TextAt(i)}; with it, {all.TextAt(0)}" };
    }

    private static RemedyCandidate All(List<RemedyCandidate> singles) => RemedyCandidate.One(
        singles.Skip(1).Aggregate(singles[0].TextAt(0), (text, single) => $"{text}; with it, {single.TextAt(0)}"),
        [.. singles.SelectMany(single => single.At(0))]);

    // What the caller fixed, left to the plan, and a form that does not give.
    private List<RemedyCandidate> AsThePlanChooses()
    {
        var changes = new List<RemedyCandidate>();
        if (draft.Form.Backing == FormBacking.None && draft.Give.Rotation > draft.Brake.StopResolution)
            changes.Add(ChangeWords.Ribs($"put ribs under the form, so that it does not give under the pull"));
        if (draft.Panel.LeverMm is not null)
            changes.Add(RemedyCandidate.One($"leave the lever to the plan (no panel.lever)", new JobChange(JobField.PanelLever, null)));
        if (FixedSteps() is { Count: > 0 } steps)
            changes.Add(RemedyCandidate.One($"leave number and spacing of the folds to the plan", [.. steps]));
        if (draft.Form.Stepping.Ends == SteppingEnds.Full)
            changes.Add(RemedyCandidate.One($"use half folds at the ends (ends: half) in place of full ones", HalfEnds));
        return changes;
    }

    private static JobChange HalfEnds { get; } = new(JobField.SteppingEnds, null, SteppingEnds.Half);

    private List<JobChange> FixedSteps()
    {
        var stepping = draft.Form.Stepping;
        var changes = new List<JobChange>();
        if (stepping.Folds is not null)
            changes.Add(new(JobField.SteppingFolds, null));
        if (stepping.FoldAngle is not null)
            changes.Add(new(JobField.SteppingAngle, null));
        if (stepping.SpacingMm is not null)
            changes.Add(new(JobField.SteppingSpacing, null));
        if (stepping.MaxFacetMm is not null)
            changes.Add(new(JobField.SteppingMaxFacet, null));
        return changes;
    }

    // One value each: a solve says whether it helps, and a little more or less of it does not.
    private RemedyCandidate Folds(int count) => _words.Folds(new([count], 0), []);

    private RemedyCandidate LongerLeadOut()
    {
        var value = RemedyValues.Ceiling(job.Units.FromMm(Longer * draft.Panel.LeadOutMm), RemedyValues.Tape(job.Units));
        return RemedyCandidate.One(
            $"leave a lead-out of {_words.LengthOf(value)} on the panel to pull on, and trim it after", new JobChange(JobField.PanelLeadOut, value));
    }

    // The same panel, clamped at its other end.
    private RemedyCandidate TurnedRound()
    {
        if (draft.Panel.Curve is not ProgressiveCurve bend || draft.Panel.Mirrored)
            return RemedyCandidate.Nothing;
        return RemedyCandidate.One(
            $"turn the panel round: clamp it at the end that is pulled now",
            new(JobField.CurveStartRadius, Units(bend.EndRadiusMm)),
            new(JobField.CurveEndRadius, Units(bend.StartRadiusMm)),
            new(JobField.PanelLeadIn, Units(draft.Panel.LeadOutMm)),
            new(JobField.PanelLeadOut, Units(draft.Panel.LeadInMm)));

        double? Units(double? mm) => mm is { } length ? Math.Round(job.Units.FromMm(length), 6) : null;
    }

    private IEnumerable<RemedyCandidate> OtherPanels()
    {
        yield return _change.ThickerPanel(1.25, MostThicker);
        yield return _words.Sweep(0.75 * draft.FinishedSweep, draft.FinishedSweep, LeastSweep);
        yield return _words.Tighter(0.8, LeastRadius);
    }
}
