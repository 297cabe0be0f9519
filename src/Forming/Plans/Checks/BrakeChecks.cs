using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the brake can make the folds.</summary>
internal static class BrakeChecks
{
    /// <summary>A fold of fewer stop steps than this is set to a quarter of itself at best (assumption).</summary>
    private const double StepsPerFold = 2;

    /// <summary>Keep a fifth of the rating in hand: common practice, no source.</summary>
    public const double CapacityInHand = 0.8;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(BrakeLength(draft));
        checks.Add(MinimumFacet(draft));
        checks.Add(StopResolution(draft));
        if (draft.Stations.Max(station => station.StopAngle?.Radians) is { } furthest)
            checks.Add(StopAngle(draft, furthest));
        if (draft.Brake.Capacity is { } capacity)
            checks.Add(ThicknessCapacity(draft, capacity));
    }

    private static Check BrakeLength(PlanDraft draft) => PlanChecks.AtMost(
        "brake-length",
        Verdict.Fail,
        Quantity.Length,
        draft.Form.WidthMm,
        draft.Brake.LengthMm,
        $"form width along the folds against the brake's length",
        () => $"a form of at most {Figure.Length(draft.Brake.LengthMm)}, in parts set end to end, or a longer brake");

    private static Check MinimumFacet(PlanDraft draft)
    {
        var least = draft.NarrowestFacetMm;
        return PlanChecks.AtLeast(
            "minimum-facet",
            Verdict.Fail,
            Quantity.Length,
            least,
            draft.Brake.MinFacetMm,
            $"the narrowest facet or lead is {Figure.Length(least)}",
            () => $"fewer folds or longer leads, until every one reaches {Figure.Length(draft.Brake.MinFacetMm)}");
    }

    private static Check StopResolution(PlanDraft draft)
    {
        var least = draft.Stations.Min(station => station.FoldAngle.Radians);
        var limit = StepsPerFold * draft.Brake.StopResolution.Radians;
        return PlanChecks.AtLeast(
            "stop-resolution",
            Verdict.Warn,
            Quantity.Angle,
            least,
            limit,
            $"the smallest fold against {StepsPerFold} steps of the stop; {draft.Stations.Count} folds can add up to {Figure.Angle(draft.Stations.Count * draft.Brake.StopResolution.Radians / 2)} off",
            () => $"fewer folds, full ends, or a stop that steps {Figure.Angle(least / StepsPerFold)}");
    }

    private static Check StopAngle(PlanDraft draft, double furthest)
    {
        var limit = BrakeSpec.HalfTurn.Radians;
        var isWithin = furthest < limit;
        FormattableString? remedy = isWithin ? null : draft.Form.Stop is null
            ? $"a reach of where the leaf really bears, or a softer or thicker form sheet"
            : (FormattableString)$"a line of the stop that gives less, from test strips of this sheet";
        return new(
            "stop-angle",
            isWithin ? Verdict.Pass : Verdict.Fail,
            furthest,
            limit,
            Quantity.Angle,
            $"the furthest stop is {Figure.Angle(furthest)}; no brake swings through half a turn",
            remedy);
    }

    // Equal moment per length: t2 = t1 √(UTS1/UTS2), an idealisation (common practice, no source).
    private static Check ThicknessCapacity(PlanDraft draft, BrakeCapacity capacity)
    {
        var sheet = draft.Form.Sheet;
        var limit = capacity.ThicknessMm * Math.Sqrt(capacity.UltimateMpa / sheet.Material.UltimateMpa);
        var use = Math.Pow(sheet.ThicknessMm / limit, 2);
        var verdict = use > 1 ? Verdict.Fail : use > CapacityInHand ? Verdict.Warn : Verdict.Pass;
        FormattableString? remedy = verdict == Verdict.Pass
            ? null
            : (FormattableString)$"a form sheet of at most {Figure.Length(limit * Math.Sqrt(CapacityInHand))} in this material; never past the maker's plate";
        return new(
            "capacity",
            verdict,
            use,
            1,
            Quantity.Number,
            $"{Figure.Length(sheet.ThicknessMm)} of {sheet.Material.Name} needs {100 * use:0} % of the moment the brake is rated for over its full length",
            remedy);
    }
}
