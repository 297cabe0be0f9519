using Forming.Results;

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
    }

    private static Check FacetWidth(PlanDraft draft)
    {
        var result = draft.PrintThrough;
        if (!result.Known)
        {
            return new(
                "facet-width",
                Verdict.Warn,
                result.WidestFacetMm,
                null,
                Quantity.Length,
                $"print-through is not known: {result.WhyUnknown}; the facets were chosen as for the worst sheet and the longest lever in order",
                $"a lever and material data within the model's reach, or a wrapped test piece");
        }

        // Each facet is held against its own allowance; the figures shown are those of the one that comes nearest to it.
        if (result is not { NearestFacetMm: { } facet, AllowedFacetMm: { } allowed } || facet <= allowed * Equal)
        {
            return new(
                "facet-width",
                Verdict.Pass,
                result.NearestFacetMm,
                result.AllowedFacetMm,
                Quantity.Length,
                $"the facet nearest to its limit for a {result.Allowed.Name} finish");
        }

        return new(
            "facet-width",
            Verdict.Warn,
            facet,
            allowed,
            Quantity.Length,
            $"facets of {Figure.Length(facet)} will show: ripple {Figure.Length(result.RippleMm!.Value)}, slope {Figure.Angle(result.Slope!.Value.Radians)}, for a {result.Allowed.Name} finish",
            FacetRemedy.For(draft, facet, allowed));
    }

    private static Check OwnMaximum(PlanDraft draft, double maxFacet) => PlanChecks.AtMost(
        "max-facet",
        Verdict.Warn,
        Quantity.Length,
        draft.PrintThrough.WidestFacetMm,
        maxFacet * Equal,
        $"the widest facet against the most you asked for",
        () => $"more folds, or a brake that folds facets of {Figure.Length(maxFacet)}");
}
