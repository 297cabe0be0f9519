using Forming.Facets;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the panel can be clamped and pulled, and the form bears it.</summary>
internal static class PullChecks
{
    /// <summary>Horizontal push or pull, standing, whole body [N]: source key <c>push-pull-1986</c>.</summary>
    public const double HandForceN = 225;

    /// <summary>Lifting load constant under ideal conditions [kg]: source key <c>niosh-94-110</c>.</summary>
    public const double LiftKg = 23;

    /// <summary>What one person's hands can keep level along an edge [mm]: an assumption.</summary>
    private const double OnePersonWidthMm = 1200;

    /// <summary>More than this many hands find no room along one edge: an assumption.</summary>
    private const double MostPeople = 6;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(Lever(draft));
        checks.Add(HandForce(draft.Pull.ForceN));
        checks.Add(PanelWidth(draft));
        checks.Add(Mass(draft));
        checks.Add(FormGive(draft));
        checks.Add(FormYield(draft));
        if (draft.FormSweep > Math.PI / 2 || draft.Form.LeadInMm <= draft.Panel.Clamp.GapMm)
            checks.Add(ClampAccess(draft));
    }

    private static Check Lever(PlanDraft draft)
    {
        var judge = draft.Judge;
        var facet = draft.PrintThrough.WidestFacetMm;
        if (!judge.CanPullDown(facet))
        {
            return new(
                "lever",
                Verdict.Fail,
                judge.LeverMm,
                facet,
                Quantity.Length,
                $"the lever past the end of the curve is shorter than one facet, so the last facet cannot be pulled down",
                $"a lead-out and a lever of at least {Figure.Length(facet)}, trimmed after");
        }

        if (draft.Pull.LongestLeverMm is not { } longest || longest >= judge.LeverMm)
        {
            return new(
                "lever",
                Verdict.Pass,
                judge.LeverMm,
                draft.Pull.LongestLeverMm,
                Quantity.Length,
                $"hand past the end of the curve, against the longest lever that keeps the wrap in order");
        }

        if (longest >= facet)
        {
            return new(
                "lever",
                Verdict.Warn,
                judge.LeverMm,
                longest,
                Quantity.Length,
                $"the lever is past the longest that keeps the wrap in order, {Figure.Length(longest)}: the free side turns so far that the sheet may arch over folds, and print-through is not known",
                $"pull {Figure.Length(Math.Max(facet, longest * FacetJudge.LeverShare))} past the end of the curve");
        }

        return new(
            "lever",
            Verdict.Warn,
            judge.LeverMm,
            longest,
            Quantity.Length,
            longest > 0
                ? $"no lever fits: the longest that keeps the wrap in order is {Figure.Length(longest)}, and a facet is {Figure.Length(facet)}; past it the sheet may arch over folds, and print-through is not known"
                : (FormattableString)$"no lever fits: the curve alone is too long to wrap in order, so the sheet may arch over folds, and print-through is not known",
            $"a softer or thicker panel, a tighter curve, or the curve worked in shorter stretches");
    }

    /// <summary>Whether one person pulls that.</summary>
    /// <param name="forceN">Largest hand force over the whole width [N].</param>
    public static Check HandForce(double forceN)
    {
        var people = Math.Ceiling(forceN / HandForceN);
        return PlanChecks.AtMost(
            "hand-force",
            Verdict.Warn,
            Quantity.Force,
            forceN,
            HandForceN,
            $"pull at the free edge against published guidance for one standing person",
            () => people <= MostPeople
                ? $"{people:0} people, a longer lever, or a winch on a stiff bar along the whole edge"
                : (FormattableString)$"a winch or press on a stiff bar along the whole edge, a narrower panel, or a longer lever: no crew pulls this by hand");
    }

    private static Check PanelWidth(PlanDraft draft) => PlanChecks.AtMost(
        "panel-width",
        Verdict.Warn,
        Quantity.Length,
        draft.Panel.WidthMm,
        OnePersonWidthMm,
        $"panel width against what one person can keep level",
        () => $"a second pair of hands, or a stiff bar clamped along the free edge");

    private static Check Mass(PlanDraft draft)
    {
        var heavier = Math.Max(draft.PanelBlank.MassKg, draft.FormBlank.MassKg);
        return PlanChecks.AtMost(
            "lift-mass",
            Verdict.Warn,
            Quantity.Mass,
            heavier,
            LiftKg,
            $"the heavier blank against the lifting constant for ideal conditions",
            () => $"two people or a lifting aid");
    }

    private static Check FormGive(PlanDraft draft) => PlanChecks.AtMost(
        "form-give",
        Verdict.Warn,
        Quantity.Angle,
        draft.Give.Rotation.Radians,
        draft.Brake.StopResolution.Radians,
        $"how far the form's end turns under the pull, against one step of the stop; an estimate",
        () => $"ribs cut to the inside profile, backing under the facets, or a thicker form");

    private static Check FormYield(PlanDraft draft) => PlanChecks.AtMost(
        "form-yield",
        Verdict.Warn,
        Quantity.MomentPerWidth,
        draft.Give.MomentPerWidth,
        draft.Give.FirstYieldPerWidth,
        $"largest moment the form carries against its first yield; an estimate",
        () => $"ribs cut to the inside profile, backing under the facets, or a thicker form");

    private static Check ClampAccess(PlanDraft draft)
    {
        var clamp = draft.Panel.Clamp;
        if (draft.Form.LeadInMm <= clamp.GapMm)
        {
            return new(
                "clamp-access",
                Verdict.Warn,
                draft.Form.LeadInMm,
                clamp.GapMm,
                Quantity.Length,
                $"the form's lead-in ends before the clamp, which stands {Figure.Length(clamp.GapMm)} behind the first fold",
                $"a lead-in longer than {Figure.Length(clamp.GapMm)}, or a clamp closer to the first fold");
        }

        if (draft.ClampRoomMm is not { } room)
        {
            return new(
                "clamp-access", Verdict.Pass, null, clamp.HeightMm, Quantity.Length, $"nothing of the form hangs over the clamp");
        }

        return PlanChecks.AtLeast(
            "clamp-access",
            Verdict.Warn,
            Quantity.Length,
            room,
            clamp.HeightMm,
            $"room between the form's overhang and its lead-in",
            () => $"a clamp at most {Figure.Length(Math.Max(0, room))} high, a longer lead-in, or a shorter lead-out on the form");
    }
}
