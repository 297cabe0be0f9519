using Forming.Checks;
using Forming.Plans.Drafts;
using Forming.Results;
using Forming.Wrapping;

namespace Forming.Plans.Checks;

/// <summary>Whether the facets will show.</summary>
internal static class FacetChecks
{
    /// <summary>Figures that agree this closely are equal: the planner stops at the limit itself.</summary>
    private const double Equal = 1 + 1e-9;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(FacetWidth(draft));
        if (draft.Form.Stepping.MaxFacetMm is { } maxFacet)
            checks.Add(OwnMaximum(draft, maxFacet));
        if (draft.Stepping.Refinement is { } refinement)
            checks.Add(Refined(refinement));
    }

    private static Check FacetWidth(PlanDraft draft)
    {
        var result = draft.PrintThrough;
        if (!result.Known)
        {
            return new(
                CheckIds.FacetWidth,
                Verdict.Warn,
                result.WidestFacetMm,
                null,
                $"print-through is not known: {result.WhyUnknown}; the facets were chosen as for the worst sheet and the longest lever in order");
        }

        if (draft.Stepping.Refinement is { WhyKept: null })
        {
            return new(
                CheckIds.FacetWidth,
                Verdict.Pass,
                result.NearestFacetMm,
                null,
                $"the folds were chosen by the predicted ripple in place of the closed form, which says {Figure.Length(result.RippleMm!.Value)} and {Figure.Angle(result.Slope!.Value.Radians)} here");
        }

        // Each facet is held against its own allowance; the figures shown are those of the one that comes nearest to it.
        if (result is not { NearestFacetMm: { } facet, AllowedFacetMm: { } allowed } || facet <= allowed * Equal)
        {
            return new(
                CheckIds.FacetWidth,
                Verdict.Pass,
                result.NearestFacetMm,
                result.AllowedFacetMm,
                $"the facet nearest to its limit for a {result.Allowed.Name} finish");
        }

        return new(
            CheckIds.FacetWidth,
            Verdict.Warn,
            facet,
            allowed,
            $"facets of {Figure.Length(facet)} will show: ripple {Figure.Length(result.RippleMm!.Value)}, slope {Figure.Angle(result.Slope!.Value.Radians)}, for a {result.Allowed.Name} finish");
    }

    private static Check Refined(SteppingRefinement refinement) => refinement.WhyKept is { } why
        ? new(
            CheckIds.RefinedFolds,
            Verdict.Warn,
            refinement.Folds,
            null,
            $"the closed form's folds were kept: {why}")
        : new(
            CheckIds.RefinedFolds,
            Verdict.Pass,
            refinement.Folds,
            null,
            $"refined by the predicted ripple from {refinement.ClosedFormFolds} folds to {refinement.Folds}");

    private static Check OwnMaximum(PlanDraft draft, double maxFacet) => PlanChecks.AtMost(
        CheckIds.MaxFacet,
        Verdict.Warn,
        draft.PrintThrough.WidestFacetMm,
        maxFacet * Equal,
        $"the widest facet against the most you asked for");
}
