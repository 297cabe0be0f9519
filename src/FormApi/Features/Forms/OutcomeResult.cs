using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming.Plans;
using Forming.Prediction;

namespace FormApi.Features.Forms;

/// <summary>
/// The panel let go, from a simulated pull not yet checked against measured panels; all of it at <c>/v1/forms/prediction</c>.
/// </summary>
/// <param name="Solved">Whether the folds were solved on the pull, so that the panel has the sweep asked for.</param>
/// <param name="Text">Why they were not; null where they were.</param>
/// <param name="Radius">Radius over the middle folds [mm or in]; null where flat or not known.</param>
/// <param name="Sweep">Sweep of the panel let go [°]; null on a taper, or where not known.</param>
/// <param name="Ends">A taper's ends; null where the panel is alike all along, or not known.</param>
/// <param name="Miss">Distance from the wanted curve; null where not known.</param>
/// <param name="LeadOut">Where the curve's end lies, the lead-ins laid on each other: along the wanted lead-out, and across it to its left
/// [mm or in]; null where not known.</param>
/// <param name="Ripple">How much of the facets will show; null where nothing was pulled.</param>
/// <param name="Untouched">Folds that the panel does not touch.</param>
/// <param name="Touches">Angle and force at which the panel reaches each fold; empty where nothing was pulled.</param>
/// <param name="Turn">How far the face of a taper turns, square to its rulings [°]: less than the sweep of its edges. Else left out.</param>
internal sealed record OutcomeResult(
    bool Solved,
    string? Text,
    double? Radius,
    double? Sweep,
    PanelEndsResult? Ends,
    [property: InFull] MissResult? Miss,
    [property: InFull] Pair? LeadOut,
    RippleResult? Ripple,
    IReadOnlyList<int> Untouched,
    [property: InFull] PullStepResult[] Touches,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Turn)
{
    /// <summary>The outcome in the caller's units.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="units">The caller's units.</param>
    public static OutcomeResult From(PlannedPanel panel, UnitSystem units)
    {
        var (prediction, shape) = (panel.Prediction, panel.Prediction?.Shape);
        return new(
            panel.WhyNotSolved is null,
            units.Wording.OfOptional(panel.WhyNotSolved),
            units.Length(shape?.RadiusMm),
            shape?.Ends is null ? UnitSystem.Degrees(shape?.Sweep) : null,
            PanelEndsResult.From(shape?.Ends, units),
            MissResult.From(shape, units),
            shape is null ? null : units.Point(shape.LeadOutOffset),
            prediction is null ? null : RippleResult.From(prediction.Ripple, units),
            prediction?.Untouched ?? [],
            Lists.Map(prediction?.Steps ?? [], step => PullStepResult.From(step, prediction!.WidthMm, units)),
            shape?.Ends is null ? null : UnitSystem.Degrees(shape.Sweep));
    }
}

/// <summary>Largest distance of the panel's mid surface from the wanted one over the curve, at equal lengths along both.</summary>
/// <param name="Fitted">With the two laid over each other as well as they go [mm or in].</param>
/// <param name="Held">With the lead-in flats laid on each other [mm or in].</param>
internal sealed record MissResult(double Fitted, double Held)
{
    /// <summary>The miss in the caller's units, or null.</summary>
    /// <param name="shape">The panel let go, or null.</param>
    /// <param name="units">The caller's units.</param>
    public static MissResult? From(PredictedShape? shape, UnitSystem units) =>
        shape is null ? null : new(units.Length(shape.MissMm), units.Length(shape.HeldMissMm));
}

/// <summary>Both ends of a tapered panel let go.</summary>
/// <param name="Near">Near end.</param>
/// <param name="Far">Far end.</param>
internal sealed record PanelEndsResult(PanelEndResult Near, PanelEndResult Far)
{
    /// <summary>The ends in the caller's units, or null.</summary>
    /// <param name="ends">The ends, or null.</param>
    /// <param name="units">The caller's units.</param>
    public static PanelEndsResult? From(PredictedEnds? ends, UnitSystem units) =>
        ends is null ? null : new(PanelEndResult.From(ends.Near, units), PanelEndResult.From(ends.Far, units));
}

/// <summary>One end of a tapered panel let go; radii square to the rulings.</summary>
/// <param name="Radius">Radius over the middle folds [mm or in]; null where flat.</param>
/// <param name="WantedRadius">The same of the wanted panel [mm or in]; null where flat.</param>
/// <param name="Ripple">Largest peak-to-valley height [mm or in]; null where not known.</param>
/// <param name="Slope">Largest slope [°]; null where not known.</param>
internal sealed record PanelEndResult(double? Radius, double? WantedRadius, double? Ripple, double? Slope)
{
    /// <summary>The end in the caller's units.</summary>
    /// <param name="end">The end.</param>
    /// <param name="units">The caller's units.</param>
    public static PanelEndResult From(PredictedEnd end, UnitSystem units) => new(
        units.Length(end.RadiusMm), units.Length(end.WantedRadiusMm), units.Length(end.RippleMm), UnitSystem.Degrees(end.Slope));
}

/// <summary>How much of the facets will show.</summary>
/// <param name="Known">Whether it is known; false never means smooth.</param>
/// <param name="Text">Why it is not known, or null.</param>
/// <param name="Height">Largest peak-to-valley height over one facet [mm or in]; null where not known.</param>
/// <param name="Slope">Largest slope against a facet's own smooth arc [°]; null where not known.</param>
/// <param name="Facet">Number of the facet nearest to the limits of the finish; null where not known.</param>
internal sealed record RippleResult(bool Known, string? Text, double? Height, double? Slope, int? Facet)
{
    /// <summary>The ripple in the caller's units.</summary>
    /// <param name="ripple">The ripple.</param>
    /// <param name="units">The caller's units.</param>
    public static RippleResult From(PredictedRipple ripple, UnitSystem units) =>
        new(ripple.Known, ripple.WhyUnknown, units.Length(ripple.HeightMm), UnitSystem.Degrees(ripple.Slope), ripple.Facet);
}

/// <summary>The pull when the panel reaches a fold.</summary>
/// <param name="Fold">Number of the fold just touched, from 1; one more than there are folds when the panel meets the lead-out.</param>
/// <param name="EndAngle">Angle of the sheet's end [°].</param>
/// <param name="Force">Hand force, square to the sheet's end, whole width [N or lbf].</param>
/// <param name="ClampMoment">Size of the moment per width at the clamp [N·mm/mm or lbf·in/in].</param>
internal sealed record PullStepResult(int Fold, double EndAngle, double Force, double ClampMoment)
{
    /// <summary>The step in the caller's units.</summary>
    /// <param name="step">The step.</param>
    /// <param name="widthMm">Width of the panel [mm].</param>
    /// <param name="units">The caller's units.</param>
    public static PullStepResult From(PullStep step, double widthMm, UnitSystem units) => new(
        step.Fold, UnitSystem.Degrees(step.EndAngle), units.Force(step.ForcePerWidth * widthMm), units.Moment(step.ClampMomentPerWidth));
}
