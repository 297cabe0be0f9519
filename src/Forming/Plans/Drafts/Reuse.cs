using Forming.Jobs;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Springback;

namespace Forming.Plans.Drafts;

/// <summary>What of a known plan stays the same for a like job.</summary>
internal static class Reuse
{
    /// <summary>Whether a plan that is known has the same finished curve.</summary>
    /// <param name="known">The plan, or null.</param>
    /// <param name="panel">The panel.</param>
    public static bool KeepsCurve(PlanDraft? known, PanelSpec panel) => known is { Finished: not null } && IsSameCurve(known.Panel, panel);

    /// <summary>Whether a plan that is known has the same contact curve, lever and folds too.</summary>
    /// <param name="known">The plan, or null.</param>
    /// <param name="job">What is asked.</param>
    public static bool KeepsFolds(PlanDraft? known, FormJob job) => KeepsCurve(known, job.Panel) && HasSameFolds(known!.Job, job);

    /// <summary>Whether a plan that is known was solved for the same pull.</summary>
    /// <param name="known">The plan, or null.</param>
    /// <param name="job">What is asked.</param>
    /// <remarks>
    /// The solver looks at the flat before the curve, at the clamp and, over a bare form, at the form's own stiffness too.
    /// </remarks>
    public static bool KeepsSolution(PlanDraft? known, FormJob job) =>
        known is not null
        && IsSameCurve(known.Panel, job.Panel)
        && HasSameFolds(known.Job, job)
        && known.Panel.LeadInMm == job.Panel.LeadInMm
        && known.Panel.Clamp.GapMm == job.Panel.Clamp.GapMm
        && FormBeam.Of(known.Job) == FormBeam.Of(job);

    /// <summary>Why no pull is simulated for a model.</summary>
    /// <param name="springback">The model.</param>
    public static FormattableString WhyNotSimulated(SpringbackChoice springback) => springback is MeasuredFactor
        ? $"a measured factor is pure geometry, with no pull behind it"
        : (FormattableString)$"the model pure-bending is quick and simulates no pull";

    private static bool IsSameCurve(PanelSpec known, PanelSpec panel) =>
        known.Curve == panel.Curve && known.Surface == panel.Surface && known.Sheet.ThicknessMm == panel.Sheet.ThicknessMm;

    private static bool HasSameFolds(FormJob known, FormJob job) =>
        Bare(known.Panel) == Bare(job.Panel)
        && known.Form.Stepping == job.Form.Stepping
        && known.Form.FoldRadiusMm == job.Form.FoldRadiusMm
        && known.Form.Sheet.ThicknessMm == job.Form.Sheet.ThicknessMm
        && known.Form.NeutralFactor == job.Form.NeutralFactor
        && known.Brake.MinFacetMm == job.Brake.MinFacetMm
        && known.Marks.Tape == job.Marks.Tape;

    // Without what neither curve nor lever nor folds depend on.
    private static PanelSpec Bare(PanelSpec panel) => panel with
    {
        WidthMm = 0,
        LeadInMm = 0,
        Grain = default,
        Clamp = Clamp.Default,
        PullBy = PullBy.OnePerson,
        Predict = false,
    };
}
