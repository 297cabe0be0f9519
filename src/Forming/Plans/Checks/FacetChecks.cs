using Forming.Checks;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the facets will show.</summary>
internal static class FacetChecks
{
    /// <summary>Values that agree this closely are equal: the planner stops at the limit itself.</summary>
    private const double Equal = 1 + 1e-9;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(FacetWidth(draft));
        if (draft.Form.Stepping.MaxFacetMm is { } maxFacet)
            checks.Add(OwnMaximum(draft, maxFacet));
    }

    private static Check FacetWidth(PlanDraft draft)
    {
        var result = draft.PrintThrough;
        var isSimulated = draft.Solution is { Prediction: { LandsInOrder: true, Ripple.Known: true } };
        if (!result.Known && !isSimulated)
        {
            return new(
                CheckIds.FacetWidth,
                Verdict.Warn,
                result.WidestFacetMm,
                null,
                $"print-through is not known: {result.WhyUnknown}; facets were sized for the worst sheet at the longest workable lever");
        }

        if (isSimulated)
        {
            return new(
                CheckIds.FacetWidth,
                Verdict.Pass,
                result.NearestFacetMm ?? result.WidestFacetMm,
                null,
                result is { RippleMm: { } ripple, Slope: { } slope }
                    ? $"judged by the predicted ripple in place of the closed form, which says {Figure.Length(ripple)} and {Figure.Angle(slope.Radians)} here"
                    : (FormattableString)$"judged by the predicted ripple, facet by facet; the closed form does not reach here");
        }

        // Each facet has its own allowance; the values shown are those of the facet nearest to its allowance.
        if (result is not { NearestFacetMm: { } facet, AllowedFacetMm: { } allowed } || facet <= allowed * Equal)
        {
            return new(
                CheckIds.FacetWidth,
                Verdict.Pass,
                result.NearestFacetMm,
                result.AllowedFacetMm,
                result is { NearestFacetMm: { } near, AllowedFacetMm: { } most }
                    ? $"the facet nearest to its limit is {Figure.Length(near)} wide; a {result.Allowed.Name} finish allows {Figure.Length(most)}"
                    : (FormattableString)$"no facet is near the limit of a {result.Allowed.Name} finish");
        }

        return new(
            CheckIds.FacetWidth,
            Verdict.Warn,
            facet,
            allowed,
            $"facets of {Figure.Length(facet)} will show: ripple {Figure.Length(result.RippleMm!.Value)}, slope {Figure.Angle(result.Slope!.Value.Radians)}, for a {result.Allowed.Name} finish");
    }

    private static Check OwnMaximum(PlanDraft draft, double maxFacet) => PlanChecks.AtMost(
        CheckIds.MaxFacet,
        Verdict.Warn,
        draft.PrintThrough.WidestFacetMm,
        maxFacet * Equal,
        $"the widest facet is {Figure.Length(draft.PrintThrough.WidestFacetMm)}; you asked for {Figure.Length(maxFacet)} at most");
}
