using Forming.Curves;
using Forming.Jobs;
using Forming.Springback;

namespace Forming.Wrapping;

/// <summary>How the panel springs back, by the model in use and by another.</summary>
internal static class SpringbackReports
{
    public static SpringbackReport Of(WrappedForm wrapped, FinishedCurve finished, PanelSpec panel, CancellationToken cancellation)
    {
        var rule = wrapped.Rule;
        var tightest = 1 / finished.TightestRadiusMm;
        var gentlest = 1 / finished.GentlestRadiusMm;
        var places = wrapped.Folds.Polygon.Places;
        return new(
            IdOf(panel.Springback),
            FactorFor(tightest),
            FactorFor(gentlest),
            wrapped.Contact.Sweep - finished.Sweep,
            1 / rule.Law.YieldCurvature,
            panel.Springback is PureBending ? IdOf(new WrappedOverFacets()) : IdOf(new PureBending()),
            wrapped.OtherSweep(finished, panel, cancellation));

        // Where facets add to the set, the factor changes along an arc: it is read at the nearest fold.
        double FactorFor(double curvature)
        {
            if (rule.MeasuredFactor is { } factor)
                return factor;
            if (rule.KeepsArcs)
                return curvature / rule.StateFor(curvature, 0).Curvature;
            var nearest = places.MinBy(place => Math.Abs(place.FinishedCurvature - curvature));
            return nearest.FinishedCurvature / nearest.State.Curvature;
        }
    }

    public static string IdOf(SpringbackChoice choice) => choice switch
    {
        MeasuredFactor => "measured-factor",
        EffectiveYield => "effective-yield",
        WrappedOverFacets => "wrapped",
        _ => "pure-bending",
    };
}
