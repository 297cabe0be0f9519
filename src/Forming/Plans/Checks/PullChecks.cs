using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans.Drafts;
using Forming.Pulling;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the panel can be clamped and pulled, and the form bears it.</summary>
internal static class PullChecks
{
    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(Lever(draft));
        checks.Add(HandForce(draft.Pull.ForceN, draft.Panel.PullBy));
        checks.Add(PanelWidth(draft));
        checks.Add(Mass(draft));
        checks.Add(FormGive(draft));
        checks.Add(FormYield(draft));
        if (draft.FormSweep > Math.PI / 2 || draft.Form.LeadInMm <= draft.Pull.ClampGapMm)
            checks.Add(ClampAccess(draft));
    }

    private static Check Lever(PlanDraft draft)
    {
        var judge = draft.Judge;
        var facet = draft.PrintThrough.WidestFacetMm;
        if (!judge.CanPullDown(facet))
        {
            return new(
                CheckIds.Lever,
                Verdict.Fail,
                judge.LeverMm,
                facet,
                $"the lever past the end of the curve is shorter than one facet, so the last facet cannot be pulled down")
            { Bound = Bound.Least };
        }

        if (draft.Solution is { Prediction.LandsInOrder: true })
            return SimulatedLever(judge.LeverMm, draft.Pull.LongestLeverMm);
        var least = FacetJudge.LeastLeverMm(facet, judge.SlideMm);
        if (draft.Pull.LongestLeverMm is not { } longest || longest >= judge.LeverMm)
        {
            if (!judge.ReachesPast(facet))
            {
                return new(
                    CheckIds.Lever,
                    Verdict.Warn,
                    judge.LeverMm,
                    least,
                    $"the lever is short: the panel slides forward under the hand by up to {Figure.Length(judge.SlideMm)}, and a facet is {Figure.Length(facet)}; the hand may meet the form before the last facet lies, and print-through is not known")
                { Bound = Bound.Least };
            }

            return new(
                CheckIds.Lever,
                Verdict.Pass,
                judge.LeverMm,
                draft.Pull.LongestLeverMm,
                draft.Pull.LongestLeverMm is { } most
                    ? $"the hand pulls {Figure.Length(judge.LeverMm)} past the end of the curve; up to {Figure.Length(most)} the panel lands on the folds one after another"
                    : (FormattableString)$"the hand pulls {Figure.Length(judge.LeverMm)} past the end of the curve; the panel lands on the folds one after another");
        }

        if (longest >= least)
        {
            return new(
                CheckIds.Lever,
                Verdict.Warn,
                judge.LeverMm,
                longest,
                $"the lever is past the longest that keeps the wrap in order, {Figure.Length(longest)}: the free side turns so far that the sheet may arch over folds, and print-through is not known");
        }

        return new(
            CheckIds.Lever,
            Verdict.Warn,
            judge.LeverMm,
            longest,
            longest > 0
                ? $"no lever fits: the longest that keeps the wrap in order is {Figure.Length(longest)}, and pulling the last facet down needs {Figure.Length(least)}; past it the sheet may arch over folds, and print-through is not known"
                : (FormattableString)$"no lever fits: the curve alone is too long to wrap in order, so the sheet may arch over folds, and print-through is not known");
    }

    // The longest lever is an estimate of what the simulation shows, so where there is a simulation that one counts.
    private static Check SimulatedLever(double lever, double? longest) => lever > longest
        ? new(
            CheckIds.Lever,
            Verdict.Pass,
            lever,
            null,
            $"the hand pulls {Figure.Length(lever)} past the end of the curve; simulated with this lever, the panel lands on the folds one after another, so the estimate of the longest ({Figure.Length(Math.Max(0, longest.Value))}) does not count")
        : new(
            CheckIds.Lever,
            Verdict.Pass,
            lever,
            longest,
            $"the hand pulls {Figure.Length(lever)} past the end of the curve; simulated with this lever, the panel lands on the folds one after another");

    /// <summary>Whether those who pull can pull that.</summary>
    /// <param name="forceN">Largest hand force over the whole width [N].</param>
    /// <param name="by">Who or what pulls.</param>
    public static Check HandForce(double forceN, PullBy by) => PlanChecks.AtMost(
        CheckIds.HandForce,
        Verdict.Warn,
        forceN,
        by.LimitN,
        by switch
        {
            { RatedN: { } rated } => $"the pull is {Figure.Force(forceN)}; what pulls it is rated for {Figure.Force(rated)}",
            { People: 1 } => $"the pull is {Figure.Force(forceN)}; one person should not pull more than {Figure.Force(WorkingLimits.HandForceN)}",
            _ => (FormattableString)$"the pull is {Figure.Force(forceN)}; {by.People} people should not pull more than {Figure.Force(by.LimitN)}",
        });

    private static Check PanelWidth(PlanDraft draft)
    {
        var by = draft.Panel.PullBy;
        if (by.RatedN is not null)
            return new(CheckIds.PanelWidth, Verdict.Pass, draft.Panel.WidthMm, null, $"a stiff bar along the whole edge keeps the panel level");
        return PlanChecks.AtMost(
            CheckIds.PanelWidth,
            Verdict.Warn,
            draft.Panel.WidthMm,
            by.People * WorkingLimits.OnePersonWidthMm,
            $"the panel is {Figure.Length(draft.Panel.WidthMm)} wide; {Who(by)} can keep {Figure.Length(by.People * WorkingLimits.OnePersonWidthMm)} level");
    }

    private static Check Mass(PlanDraft draft)
    {
        var by = draft.Panel.PullBy;
        var heavier = Math.Max(draft.PanelBlank.MassKg, draft.FormBlank.MassKg);
        var limit = by.LimitKg;
        return PlanChecks.AtMost(
            CheckIds.LiftMass,
            Verdict.Warn,
            heavier,
            limit,
            by.RatedN is null
                ? $"the heavier blank weighs {Figure.Mass(heavier)}; {Who(by with { People = Math.Min(by.People, WorkingLimits.MostLifters) })} should not lift more than {Figure.Mass(limit)}"
                : (FormattableString)$"the heavier blank weighs {Figure.Mass(heavier)}; what lifts it is rated for {Figure.Mass(limit)}");
    }

    private static FormattableString Who(PullBy by) => by.People == 1 ? $"one person" : (FormattableString)$"{by.People} people";

    private static Check FormGive(PlanDraft draft)
    {
        var give = draft.Give.Rotation.Radians;
        if (draft.Form.Backing == FormBacking.Ribs)
            return Ribbed(CheckIds.FormGive, give);
        if (draft.Solution is { IsSolved: true })
            return new(CheckIds.FormGive, Verdict.Pass, give, null, $"the form's end turns {Figure.Angle(give)} under the pull; the folds allow for it");
        var allowed = draft.Brake.StopResolution.Radians;
        return PlanChecks.AtMost(
            CheckIds.FormGive,
            Verdict.Warn,
            give,
            allowed,
            draft.IsGiveEstimated
                ? $"without ribs the form's end turns {Figure.Angle(give)} under the pull ({Figure.Angle(allowed)} allowed); an estimate"
                : (FormattableString)$"without ribs the form's end turns {Figure.Angle(give)} under the pull ({Figure.Angle(allowed)} allowed); the folds do not allow for it");
    }

    private static Check FormYield(PlanDraft draft) => draft.Form.Backing == FormBacking.Ribs
        ? draft.Ribs is { HoldSheet: false } ribs
            ? BetweenRibs(draft.Give.MomentPerWidth, ribs)
            : Ribbed(CheckIds.FormYield, draft.Give.MomentPerWidth)
        : FormYield(draft.Give, draft.Pull.ClampGapMm, draft.IsGiveEstimated);

    /// <summary>Whether a bare form stays elastic: one that bends for good lets the panel go under the pull, so this one fails.</summary>
    /// <param name="give">How far the form gives.</param>
    /// <param name="clampGapMm">From the first fold's tangent line back to the clamp [mm].</param>
    /// <param name="isEstimated">Whether that is the closed form's estimate.</param>
    public static Check FormYield(FormGive give, double clampGapMm, bool isEstimated)
    {
        var (share, gap, estimate) = (give.ShareOfYield, Figure.Length(clampGapMm), isEstimated ? " (an estimate)" : "");
        var verdict = share >= 1 ? Verdict.Fail : share >= WorkingLimits.NearYield ? Verdict.Warn : Verdict.Pass;
        return new(
            CheckIds.FormYield,
            verdict,
            give.MomentPerWidth,
            give.FirstYieldPerWidth,
            (verdict, isEstimated) switch
            {
                (Verdict.Fail, _) => $"the bare form would bend for good under the pull, at {share:0.0} times its first yield{estimate}, clamped {gap} behind the first fold: do not pull on it until ribs back it",
                (Verdict.Warn, true) => $"the bare form reaches {share:P0} of its first yield under the pull, clamped {gap} behind the first fold, and that estimate may be an eighth too small",
                (Verdict.Warn, false) => $"the bare form reaches {share:P0} of its first yield under the pull, clamped {gap} behind the first fold: little is left for a harder pull",
                _ => (FormattableString)$"the bare form stays elastic under the pull, at {share:P0} of its first yield{estimate}, clamped {gap} behind the first fold",
            });
    }

    private static Check BetweenRibs(double bare, Ribs ribs) => new(
        CheckIds.FormYield,
        Verdict.Warn,
        bare,
        null,
        $"even with ribs {Figure.Length(ribs.SpacingMm)} apart the pull takes the form's sheet between them to {ribs.ShareOfYield:P0} of its yield: use thicker sheet, or back the whole form");

    private static Check Ribbed(CheckId id, double bare) =>
        new(id, Verdict.Pass, bare, null, $"ribs under the form carry the pull; the value is the bare form's");

    private static Check ClampAccess(PlanDraft draft)
    {
        var clamp = draft.Panel.Clamp;
        var gap = draft.Pull.ClampGapMm;
        if (draft.Form.LeadInMm <= gap)
        {
            return new(
                CheckIds.ClampAccess,
                Verdict.Warn,
                draft.Form.LeadInMm,
                gap,
                $"the form's lead-in ends before the clamp, which is {Figure.Length(gap)} behind the first fold");
        }

        if (draft.ClampRoomMm is not { } room)
        {
            return new(
                CheckIds.ClampAccess, Verdict.Pass, null, clamp.HeightMm, $"nothing of the form hangs over the clamp");
        }

        return PlanChecks.AtLeast(
            CheckIds.ClampAccess,
            Verdict.Warn,
            room,
            clamp.HeightMm,
            $"room between the form's overhang and its lead-in");
    }
}
