using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans.Checks;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Remedies;

/// <summary>What may cure a check of the pull or of the clamp, the most practical first.</summary>
/// <param name="job">What was asked.</param>
/// <param name="draft">What was worked out.</param>
/// <param name="check">The check that did not pass.</param>
internal sealed class PullCandidates(FormJob job, PlanDraft draft, Check check)
{
    /// <summary>Longer flats, and lower clamps, are not proposed: assumptions of what a shop can handle.</summary>
    private const double MostFlatMm = 5000;

    /// <inheritdoc cref="MostFlatMm"/>
    private const double LeastClampMm = 10;

    private const double LeastClampGapMm = 0.5;

    private readonly ChangeWords _words = new(job, draft);
    private readonly SingleChanges _change = new(job, draft);

    /// <summary>A lever that keeps the wrap in order and pulls the last facet down, or a panel that needs none so long.</summary>
    public IEnumerable<RemedyCandidate> Lever()
    {
        var (facet, slide) = (draft.PrintThrough.WidestFacetMm, draft.Judge.SlideMm);
        var least = FacetJudge.LeastLeverMm(facet, slide);
        var inOrder = (draft.Pull.LongestLeverMm ?? double.PositiveInfinity) * FacetJudge.LeverShare;
        var now = draft.Judge.LeverMm;
        var folds = draft.Stations.Count;
        if (now > inOrder && inOrder > 0)
        {
            var shorter = _change.Down(job.Units.FromMm(now), inOrder, 1, isFine: false);
            yield return _words.Length(JobField.PanelLever, shorter, value => $"pull {value} past the end of the curve");
            if (shorter.Numbers.Count > 0)
            {
                var lever = new JobChange(JobField.PanelLever, shorter.Numbers[shorter.Start]);
                yield return _words.Folds(
                    SingleChanges.MoreThan(folds, (int)Math.Ceiling(folds * facet / Math.Max(inOrder - slide, 1))), [lever]);
            }
        }
        else if (now < least)
        {
            yield return _words.LongerLever(_change.Up(job.Units.FromMm(now), least * SingleChanges.Safe, MostFlatMm, isFine: false));
        }

        if (now < least)
            yield return _change.MoreFolds((int)Math.Ceiling(folds * facet / Math.Max(now - slide, 1)));
        if (draft.Prediction is not null)
            yield return _change.MoreFolds(folds + 2);
        yield return _change.ThickerPanel();
        yield return _words.Sweep(draft.FinishedSweep * 0.7, draft.FinishedSweep);
        yield return _words.Tighter();
    }

    /// <summary>More people, or a machine.</summary>
    public IEnumerable<RemedyCandidate> PulledBy()
    {
        var force = check.Id == "second-half-pull" ? draft.SecondHalf!.ForceN : draft.Pull.ForceN;
        var width = draft.Panel.WidthMm;
        var mass = Math.Max(draft.PanelBlank.MassKg, draft.FormBlank.MassKg);
        var by = draft.Panel.PullBy;
        if (by.RatedN is null)
        {
            var people = check.Id switch
            {
                "hand-force" or "second-half-pull" => (int)Math.Ceiling(Math.Min(force / WorkingLimits.HandForceN, 1000)),
                "panel-width" => (int)Math.Ceiling(width / WorkingLimits.OnePersonWidthMm),
                _ => (int)Math.Ceiling(Math.Min(mass / WorkingLimits.LiftKg, 1000)),
            };
            if (people <= (check.Id == "lift-mass" ? WorkingLimits.MostLifters : PullBy.MostPeople))
                yield return HandForceRemedy.People(RemedyValues.Whole(by.People + 1, PullBy.MostPeople, people));
        }

        yield return HandForceRemedy.Rated(
            RemedyValues.Up(
            job.Units.FromN(by.RatedN ?? Math.Min(force, mass * WorkingLimits.Gravity) / 2),
            job.Units.FromN(check.Id is "hand-force" or "second-half-pull" ? force : Math.Max(force, mass * WorkingLimits.Gravity)),
            job.Units.FromN(1e9),
            RemedyValues.Load),
            job.Units);
    }

    /// <summary>A line to pull on that is on the sheet.</summary>
    public IEnumerable<RemedyCandidate> PullLine()
    {
        var (panel, lever) = (draft.Panel, draft.Judge.LeverMm);
        var sheet = panel.SheetPastCurveMm;
        yield return _words.Length(
            JobField.PanelLever, _change.Down(job.Units.FromMm(lever), sheet, 1, isFine: false), value => $"pull {value} past the end of the curve");
        yield return _words.Length(
            JobField.PanelLeadOut,
            _change.Up(job.Units.FromMm(panel.LeadOutMm), panel.LeadOutMm + lever - sheet, MostFlatMm, isFine: false),
            value => panel.Mirrored
                ? $"leave a flat of {value} between the two curves"
                : (FormattableString)$"leave a lead-out of {value} on the panel, and trim it after");
    }

    /// <summary>A flat for the clamp to bear on.</summary>
    public IEnumerable<RemedyCandidate> PanelClamp()
    {
        var (panel, flat) = (draft.Panel, draft.ClampFlatMm);
        var furthest = flat - Math.Max(panel.Clamp.DepthMm, SetupChecks.LeastGripMm);
        if (furthest > LeastClampGapMm)
        {
            yield return _words.Length(
                JobField.ClampGap,
                _change.Down(job.Units.FromMm(draft.Pull.ClampGapMm), furthest, LeastClampGapMm, isFine: false),
                value => $"set the clamp {value} behind the first fold");
        }

        yield return _words.Length(
            JobField.PanelLeadIn,
            _change.Up(job.Units.FromMm(panel.LeadInMm), panel.LeadInMm + check.Limit!.Value - flat, MostFlatMm, isFine: false),
            value => $"leave a lead-in of {value} on the panel for the clamp, and trim it after");
    }

    /// <summary>Room for the finished half of a mirrored panel to swing.</summary>
    public IEnumerable<RemedyCandidate> SecondHalfClearance()
    {
        var lacks = check.Limit!.Value - check.Value!.Value;
        yield return _words.Length(
            JobField.FormLeadOut,
            _change.Down(job.Units.FromMm(draft.Form.LeadOutMm), draft.Form.LeadOutMm - lacks, 0.5, isFine: false),
            value => $"shorten the form's lead-out to {value}, so that it clears the finished half");
        yield return _words.Length(
            JobField.ClampHeight,
            _change.Down(job.Units.FromMm(draft.Panel.Clamp.HeightMm), draft.Panel.Clamp.HeightMm - lacks, LeastClampMm, isFine: false),
            value => $"use a clamp at most {value} high");
        yield return _words.Length(
            JobField.FormLeadIn,
            _change.Down(job.Units.FromMm(draft.Form.LeadInMm), draft.Form.LeadInMm - lacks, 0.5, isFine: false),
            value => $"shorten the form's lead-in to {value}, so that it clears the finished half");
        yield return _words.Length(
            JobField.PanelLeadOut,
            _change.Up(job.Units.FromMm(draft.Panel.LeadOutMm), draft.Panel.LeadOutMm + lacks, MostFlatMm, isFine: false),
            value => $"leave a flat of {value} between the two curves");
        yield return _words.Length(
            JobField.PanelLeadIn,
            _change.Down(job.Units.FromMm(draft.Panel.LeadInMm), draft.Panel.LeadInMm - lacks, 1, isFine: false),
            value => $"shorten the panel's lead-in to {value}, so that the finished half swings clear");
    }

    /// <summary>Room for the clamp under what hangs over the lead-in.</summary>
    public IEnumerable<RemedyCandidate> ClampAccess()
    {
        var clamp = draft.Panel.Clamp;
        var gap = draft.Pull.ClampGapMm;
        if (draft.Form.LeadInMm <= gap)
        {
            yield return _words.Length(
                JobField.FormLeadIn,
                _change.Up(job.Units.FromMm(draft.Form.LeadInMm), gap * SingleChanges.Safe, MostFlatMm, isFine: false),
                value => $"make the form's lead-in {value} long, so that it reaches under the clamp");
            yield return _words.Length(
                JobField.ClampGap,
                _change.Down(job.Units.FromMm(gap), draft.Form.LeadInMm / SingleChanges.Safe, 0.5, isFine: false),
                value => $"set the clamp {value} behind the first fold");
            yield break;
        }

        if (draft.ClampRoomMm is { } room && room >= LeastClampMm)
            yield return _words.Length(
                JobField.ClampHeight,
                _change.Down(job.Units.FromMm(clamp.HeightMm), room, LeastClampMm, isFine: false),
                value => $"use a clamp at most {value} high");
        yield return _words.Length(
            JobField.FormLeadOut,
            _change.Down(job.Units.FromMm(draft.Form.LeadOutMm), draft.Form.LeadOutMm * 0.7, 0.5, isFine: false),
            value => $"shorten the form's lead-out to {value}, so that it clears the clamp");
        yield return _words.Length(
            JobField.FormLeadIn,
            _change.Up(job.Units.FromMm(draft.Form.LeadInMm), draft.Form.LeadInMm * 1.3, MostFlatMm, isFine: false),
            value => $"make the form's lead-in {value} long");
        yield return _words.Length(
            JobField.ClampGap,
            _change.Up(job.Units.FromMm(gap), Math.Max(gap * 1.3, LeastClampMm), draft.Form.LeadInMm, isFine: false),
            value => $"set the clamp {value} behind the first fold");
        yield return _words.Length(
            JobField.FormLeadIn, _change.Down(job.Units.FromMm(draft.Form.LeadInMm), gap * 1.1, 0.5, isFine: false), value => $"shorten the form's lead-in to {value}, so that nothing hangs over it");
        yield return _words.Sweep(draft.FinishedSweep * 0.95, draft.FinishedSweep);
    }
}
