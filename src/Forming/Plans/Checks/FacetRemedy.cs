using Forming.Facets;
using Forming.Materials;
using Forming.Results;
using Forming.Springback;

namespace Forming.Plans.Checks;

/// <summary>What would make a form smooth whose facets will show.</summary>
internal static class FacetRemedy
{
    private const double SearchStep = 1.02;
    private const int MostSearchSteps = 250;

    public static FormattableString For(PlanDraft draft, double facet, double allowed)
    {
        var stepping = draft.Form.Stepping;
        if (stepping.Folds is not null || stepping.FoldAngle is not null || stepping.SpacingMm is not null)
        {
            return $"{draft.FoldsWanted()} folds, or a finish that allows a ripple of {Figure.Length(draft.PrintThrough.RippleMm!.Value)}";
        }

        var brake = Figure.Length(allowed);
        var ripple = Figure.Length(draft.PrintThrough.RippleMm!.Value);
        return (RadiusFor(draft, facet), ThicknessFor(draft, facet)) switch
        {
            ({ } radius, { } thickness) => $"a brake that folds facets of {brake}, a finish that allows a ripple of {ripple}, a radius of about {Figure.Length(radius)}, or a panel of about {Figure.Length(thickness)}",
            ({ } radius, null) => $"a brake that folds facets of {brake}, a finish that allows a ripple of {ripple}, or a radius of about {Figure.Length(radius)}",
            (null, { } thickness) => $"a brake that folds facets of {brake}, a finish that allows a ripple of {ripple}, or a panel of about {Figure.Length(thickness)}",
            _ => $"a brake that folds facets of {brake}, or a finish that allows a ripple of {ripple}",
        };
    }

    // The finished inside radius at which the facet would pass, at the lever in use.
    private static double? RadiusFor(PlanDraft draft, double facet)
    {
        var radius = draft.TightestFinishedRadiusMm;
        for (var i = 0; i < MostSearchSteps; i++)
        {
            radius *= SearchStep;
            if (Passes(draft.PanelLaw, radius, draft, facet))
                return radius - (draft.Panel.Sheet.ThicknessMm / 2);
        }

        return null;
    }

    private static double? ThicknessFor(PlanDraft draft, double facet)
    {
        var thickness = draft.Panel.Sheet.ThicknessMm;
        var inside = draft.TightestFinishedRadiusMm - (thickness / 2);
        for (var i = 0; i < MostSearchSteps && thickness * SearchStep < inside; i++)
        {
            thickness *= SearchStep;
            if (Passes(BendingLaw.Of(new Sheet(draft.Panel.Sheet.Material, thickness)), inside + (thickness / 2), draft, facet))
                return thickness;
        }

        return null;
    }

    private static bool Passes(BendingLaw law, double radius, PlanDraft draft, double facet)
    {
        var state = law.LoadedFor(1 / radius);
        var judge = draft.Judge;
        var lever = Math.Min(judge.LeverMm + facet, FacetJudge.LeverShare * PrintThrough.LongestLever(state));
        return PrintThrough.AllowedFacet(lever, state, law.Stiffness, judge.Finish, judge.FirstFacetFactor) >= facet;
    }
}
