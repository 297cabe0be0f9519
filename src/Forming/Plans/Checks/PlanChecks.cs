using Forming.Checks;
using Forming.Plans.Drafts;

namespace Forming.Plans.Checks;

/// <summary>Every check of a plan, in the order in which a shop would ask.</summary>
/// <remarks>
/// Only what cannot be folded or is unsafe fails; appearance, hand force, a wide panel and a form that gives a little warn.
/// </remarks>
internal static class PlanChecks
{
    public static IReadOnlyList<Check> Of(PlanDraft draft)
    {
        var checks = new List<Check>(24);
        FoldingChecks.AddTo(checks, draft);
        BrakeChecks.AddTo(checks, draft);
        FacetChecks.AddTo(checks, draft);
        if (draft.Taper is { } taper)
            TaperChecks.AddTo(checks, taper);
        PanelChecks.AddTo(checks, draft);
        PullChecks.AddTo(checks, draft);
        SetupChecks.AddTo(checks, draft);
        if (draft.Panel.Mirrored)
            MirrorChecks.AddTo(checks, draft);
        // A taper is not predicted, which is no fault of the job's.
        if (draft is { Taper: null, Prediction: { } prediction })
            PredictionChecks.AddTo(checks, prediction, draft.Panel);
        OutcomeChecks.AddTo(checks, draft);
        OutlookChecks.AddTo(checks, draft.Outlook);
        return checks;
    }

    /// <summary>A check that a value does not exceed a limit, or warns or fails.</summary>
    public static Check AtMost(
        CheckId id, Verdict otherwise, double value, double limit, FormattableString text, Func<FormattableString>? advice = null)
    {
        var passes = value <= limit;
        return new(id, passes ? Verdict.Pass : otherwise, value, limit, text, passes ? null : advice?.Invoke()) { Bound = Bound.Most };
    }

    /// <summary>A check that a value reaches a limit, or warns or fails.</summary>
    public static Check AtLeast(
        CheckId id, Verdict otherwise, double value, double limit, FormattableString text, Func<FormattableString>? advice = null)
    {
        var passes = value >= limit;
        return new(id, passes ? Verdict.Pass : otherwise, value, limit, text, passes ? null : advice?.Invoke()) { Bound = Bound.Least };
    }
}
