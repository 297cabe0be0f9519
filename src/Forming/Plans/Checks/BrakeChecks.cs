using Forming.Checks;
using Forming.Jobs;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the brake can make the folds.</summary>
internal static class BrakeChecks
{
    /// <summary>A fold of fewer stop steps than this is set to a quarter of itself at best (assumption).</summary>
    private const double StepsPerFold = 2;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(BrakeLength(draft));
        checks.Add(MinimumFacet(draft));
        checks.Add(StopResolution(draft));
        if (draft.Stations.Max(station => station.StopAngle?.Radians) is { } furthest)
            checks.Add(StopAngle(furthest));
        if (draft.Brake.Capacity is { } capacity)
            checks.Add(ThicknessCapacity(draft, capacity));
    }

    private static Check BrakeLength(PlanDraft draft) => PlanChecks.AtMost(
        CheckIds.BrakeLength,
        Verdict.Fail,
        draft.Form.WidthMm,
        draft.Brake.LengthMm,
        $"the folds are {Figure.Length(draft.Form.WidthMm)} long, the brake takes {Figure.Length(draft.Brake.LengthMm)}");

    private static Check MinimumFacet(PlanDraft draft)
    {
        var least = draft.NarrowestFacetMm;
        return PlanChecks.AtLeast(
            CheckIds.MinimumFacet,
            Verdict.Fail,
            least,
            draft.Brake.MinFacetMm,
            $"the narrowest facet or lead is {Figure.Length(least)}");
    }

    private static Check StopResolution(PlanDraft draft)
    {
        var least = draft.Stations.Min(station => station.FoldAngle.Radians);
        var limit = StepsPerFold * draft.Brake.StopResolution.Radians;
        return PlanChecks.AtLeast(
            CheckIds.StopResolution,
            Verdict.Warn,
            least,
            limit,
            $"your stop steps {Figure.Angle(draft.Brake.StopResolution.Radians):0.###}: the form may end up to {Figure.Angle(draft.Stations.Count * draft.Brake.StopResolution.Radians / 2):0.##} out; check it with a template");
    }

    private static Check StopAngle(double furthest)
    {
        var limit = BrakeSpec.HalfTurn.Radians;
        var isWithin = furthest < limit;
        return new(
            CheckIds.StopAngle,
            isWithin ? Verdict.Pass : Verdict.Fail,
            furthest,
            limit,
            $"the furthest stop is {Figure.Angle(furthest)}; no brake swings through half a turn");
    }

    // Equal moment per length: t2 = t1 √(UTS1/UTS2), an idealisation (common practice, no source).
    private static Check ThicknessCapacity(PlanDraft draft, BrakeCapacity capacity)
    {
        var sheet = draft.Form.Sheet;
        var limit = capacity.ThicknessMm * Math.Sqrt(capacity.UltimateMpa / sheet.Material.UltimateMpa);
        var use = Math.Pow(sheet.ThicknessMm / limit, 2);
        var verdict = use > 1 ? Verdict.Fail : use > WorkingLimits.CapacityInHand ? Verdict.Warn : Verdict.Pass;
        return new(
            CheckIds.Capacity,
            verdict,
            use,
            1,
            $"{Figure.Length(sheet.ThicknessMm)} of {sheet.Material.Name} needs {100 * use:0} % of the moment the brake is rated for over its full length");
    }
}
