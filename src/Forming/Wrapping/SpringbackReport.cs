using Forming.Curves;
using Forming.Jobs;
using Forming.Springback;

namespace Forming.Wrapping;

/// <summary>How the panel springs back from the form to the finished curve.</summary>
/// <param name="Model">Id of the model used: <c>pure-bending</c>, <c>wrap</c> or <c>measured-factor</c>.</param>
/// <param name="FactorAtTightest">Finished over formed curvature where the finished curve is tightest.</param>
/// <param name="FactorAtGentlest">The same where it is gentlest; 0 at a flat end.</param>
/// <param name="Overbend">Form sweep less finished sweep.</param>
/// <param name="YieldRadiusMm">Mid-surface radius at which the sheet begins to yield [mm].</param>
public sealed record SpringbackReport(
    string Model,
    double FactorAtTightest,
    double FactorAtGentlest,
    Angle Overbend,
    double YieldRadiusMm)
{
    /// <summary>The panel's flow curve in use.</summary>
    public FlowCurve Flow { get; init; }

    internal static SpringbackReport Of(WrappedForm wrapped, FinishedCurve finished, PanelSpec panel)
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
            1 / rule.Law.YieldCurvature)
        {
            Flow = rule.Law.Flow,
        };

        // On a form solved on the wrap the factor changes along an arc: it is read at the nearest fold.
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

    internal static string IdOf(SpringbackChoice choice) => choice switch
    {
        MeasuredFactor => "measured-factor",
        SolvedOnWrap => "wrap",
        _ => "pure-bending",
    };
}
