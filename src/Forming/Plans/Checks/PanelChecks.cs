using Forming.Checks;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans.Drafts;
using Forming.Results;
using Forming.Springback;

namespace Forming.Plans.Checks;

/// <summary>Whether the panel's sheet takes the bend, and how far the model reaches.</summary>
internal static class PanelChecks
{
    /// <summary>Thin-sheet bending holds from about this radius over thickness.</summary>
    private const double ThinSheet = 5;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(PanelRadius(draft));
        checks.Add(ModelRange(draft));
        var flow = draft.PanelLaw.Flow;
        if (flow.Origin == FlowCurveOrigin.Caller)
            checks.Add(OwnFlowCurve(flow));
    }

    // The outer fibre is strained most under load, so the radius on the form is the one to hold against the material.
    private static Check PanelRadius(PlanDraft draft)
    {
        var sheet = draft.Panel.Sheet;
        var strain = sheet.ThicknessMm / 2 * draft.Tightest.Curvature;
        var limit = MinimumRadius.For(sheet.Material, draft.Panel.Grain == Grain.Across, sheet.ThicknessMm);
        return PlanChecks.AtLeast(
            CheckIds.PanelRadius,
            Verdict.Fail,
            draft.TightestInsideMm,
            limit,
            $"the panel bends to an inside radius of {Figure.Length(draft.TightestInsideMm)} on the form; {sheet.Material.Name} takes {Figure.Length(limit)} or more; the skin strains {strain:P1}");
    }

    private static Check ModelRange(PlanDraft draft)
    {
        return PlanChecks.AtLeast(
            CheckIds.ModelRange,
            Verdict.Warn,
            draft.TightestInsideMm / draft.Panel.Sheet.ThicknessMm,
            ThinSheet,
            $"the tightest inside radius on the form is {draft.TightestInsideMm / draft.Panel.Sheet.ThicknessMm:0.0} times the thickness; thin-sheet bending applies from about {ThinSheet}");
    }

    private static Check OwnFlowCurve(FlowCurve flow) => PlanChecks.AtMost(
        CheckIds.FlowCurve,
        Verdict.Warn,
        Math.Abs(flow.ProofMiss),
        WorkingLimits.ProofTolerance,
        $"your flow curve misses the proof stress by {flow.ProofMiss:P0} at a plastic strain of 0.002; it is used as given");
}
