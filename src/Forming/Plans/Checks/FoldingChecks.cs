using Forming.Checks;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the form's folds can be made in its sheet.</summary>
internal static class FoldingChecks
{
    /// <summary>The layout must fold back into the polygon this closely [mm].</summary>
    private const double FoldBackToleranceMm = 1e-6;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(StraightPart(draft));
        checks.Add(FoldRadius(draft));
        checks.Add(Closure(draft));
        if (draft.Form.Stepping.FoldAngle is not null || draft.Form.Stepping.SpacingMm is not null)
            checks.Add(SweepMatch(draft));
        checks.Add(FoldBack(draft));
    }

    // A flat of one sheet thickness keeps neighbouring folds from running into each other (assumption).
    private static Check StraightPart(PlanDraft draft)
    {
        var least = draft.ShortestStraightMm;
        var limit = draft.Form.Sheet.ThicknessMm;
        return PlanChecks.AtLeast(
            CheckIds.StraightPart,
            Verdict.Fail,
            least,
            limit,
            $"the shortest straight part, of a facet or a lead, is {Figure.Length(least)} between bend tangent lines");
    }

    private static Check FoldRadius(PlanDraft draft)
    {
        var sheet = draft.Form.Sheet;
        var yieldRadius = (1 / draft.FormLaw.YieldCurvature) - (sheet.ThicknessMm / 2);
        if (draft.Form.FoldRadiusMm >= yieldRadius)
        {
            return new(
                CheckIds.FoldRadius,
                Verdict.Fail,
                draft.Form.FoldRadiusMm,
                yieldRadius,
                $"folds this round stay elastic in {sheet.Material.Name} and spring back wholly")
            { Bound = Bound.Most };
        }

        var limit = MinimumRadius.For(sheet.Material, draft.Form.Grain == Grain.Across, sheet.ThicknessMm);
        return PlanChecks.AtLeast(
            CheckIds.FoldRadius,
            Verdict.Fail,
            draft.Form.FoldRadiusMm,
            limit,
            $"the folds have an inside radius of {Figure.Length(draft.Form.FoldRadiusMm)}; {sheet.Material.Name} takes {Figure.Length(limit)} or more");
    }

    private static Check Closure(PlanDraft draft)
    {
        const double turn = 2 * Math.PI;
        var sweep = draft.FormSweep;
        if (sweep >= turn || draft.RunsIntoItself)
        {
            return new(
                CheckIds.Closure,
                Verdict.Fail,
                sweep,
                turn,
                $"the form turns {Figure.Angle(sweep)} and runs into its own lead: the part would be trapped on it");
        }

        // Past half a turn the finished panel hooks round the form and comes off along its folds only.
        return PlanChecks.AtMost(
            CheckIds.Closure,
            Verdict.Warn,
            draft.FinishedSweep,
            Math.PI,
            $"the finished panel turns {Figure.Angle(draft.FinishedSweep)}; past 180° it hooks round the form");
    }

    private static Check SweepMatch(PlanDraft draft)
    {
        var over = draft.Stepping.SweepOver.Radians;
        FormattableString message = (draft.Solution is not null, over >= 0) switch
        {
            (true, true) => $"with the fixed step the panel comes off {Figure.Angle(over)} past the wanted sweep",
            (true, false) => $"with the fixed step the panel comes off {Figure.Angle(-over)} short of the wanted sweep",
            (false, true) => $"the fixed step takes the form {Figure.Angle(over)} past the wanted sweep",
            (false, false) => $"the fixed step leaves the form {Figure.Angle(-over)} short of the wanted sweep",
        };
        return PlanChecks.AtMost(
            CheckIds.SweepMatch,
            Verdict.Warn,
            Math.Abs(over),
            draft.Brake.StopResolution.Radians,
            message);
    }

    private static Check FoldBack(PlanDraft draft) => PlanChecks.AtMost(
        CheckIds.FoldBack,
        Verdict.Fail,
        draft.FoldBackMissMm,
        FoldBackToleranceMm,
        $"the flat layout, folded back, meets the form's own fold centres");
}
