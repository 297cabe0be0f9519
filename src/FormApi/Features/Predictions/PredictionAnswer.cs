using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Units;
using Forming.Prediction;

namespace FormApi.Features.Predictions;

/// <summary>
/// How a panel comes off a form, from a simulated pull that is not yet checked against measured panels. Lengths, forces and masses are in
/// the units of the request.
/// </summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 of canonical request and engine version: the same one is the same answer.</param>
/// <param name="Request">The request with every default shown; null where the plan chooses, or where it has no use with stations.</param>
/// <param name="Wraps">Whether the panel lands on every fold, one after another.</param>
/// <param name="Text">Why it does not; null where it does.</param>
/// <param name="Next">What to do next.</param>
/// <param name="GaveUp">Whether the solver gave up: nothing is known then, and the panel may well lie over the form. False where it does
/// not wrap because it cannot.</param>
/// <param name="Folds">Folds of the form.</param>
/// <param name="FoldsReached">Folds that the panel touched; one that it arched over is not counted.</param>
/// <param name="Lever">From the end of the curve to the hand [mm or in]; longer than the plan's where the hand would meet the form first
/// and the request gives no lever; null where nothing could be pulled.</param>
/// <param name="LeastLever">A longer lever that was tried and reaches, where with the plan's or the request's the hand meets the form first
/// [mm or in]; else null.</param>
/// <param name="LongestLever">Longest lever known to keep the wrap in order [mm or in]; 0 where none does, null where any does.</param>
/// <param name="ClampGap">Where the panel is clamped: behind the first fold's tangent point [mm or in].</param>
/// <param name="Radius">Radius of the circle that fits best from the third fold to the last but one (with five folds to the last one, with
/// fewer from the first), on the face the curve was measured on [mm or in]; null where the panel is flat there, or does not wrap.</param>
/// <param name="WantedRadius">Mean radius of the wanted curve over the same stretch [mm or in]; null where it is flat there, or the panel
/// does not wrap.</param>
/// <param name="Sweep">Sweep of the panel let go [°]; null on a taper, or where it does not wrap.</param>
/// <param name="WantedSweep">Sweep of the wanted curve [°]; null alike.</param>
/// <param name="Ends">A taper's ends; null where the panel is alike all along, or does not wrap.</param>
/// <param name="Turn">How far the face of a taper turns, square to its rulings [°]; else left out.</param>
/// <param name="WantedTurn">The same of the wanted panel [°]; else left out.</param>
/// <param name="Miss">Distance from the wanted curve; null where the panel does not wrap.</param>
/// <param name="Ripple">How much of the facets will show.</param>
/// <param name="Give">How far the form gives under the pull; null with ribs, or where the panel does not wrap.</param>
/// <param name="Facets">What each facet leaves; empty where the panel does not wrap.</param>
/// <param name="Finishes">Whether the facets show at each finish.</param>
/// <param name="Pull">The pull.</param>
/// <param name="Curve">The panel let go, a taper half-way along its rulings; null where it does not wrap.</param>
/// <param name="Checks">Every check of the prediction; of a planned form also the checks that failed.</param>
/// <param name="Safety">Cautions that the pull calls for. Local codes and licensed practice come first.</param>
/// <param name="Basis">What every headline value rests on.</param>
/// <param name="Links">The form behind it as links that hold the whole request.</param>
internal sealed record PredictionAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(PredictionRequest))] RawJson Request,
    bool Wraps,
    string? Text,
    NextStepResult[] Next,
    bool GaveUp,
    int Folds,
    int FoldsReached,
    double? Lever,
    double? LeastLever,
    double? LongestLever,
    double ClampGap,
    double? Radius,
    double? WantedRadius,
    double? Sweep,
    double? WantedSweep,
    PanelEndsResult? Ends,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Turn,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? WantedTurn,
    MissResult? Miss,
    RippleResult Ripple,
    GiveResult? Give,
    FacetResult[] Facets,
    FinishResult[] Finishes,
    PredictedPullResult Pull,
    [property: InFull] ReleasedCurveResult? Curve,
    CheckResult[] Checks,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis,
    [property: InFull] LinksResult Links)
{
    /// <summary>The answer to a request.</summary>
    /// <param name="job">The predicted request.</param>
    public static PredictionAnswer From(PredictedJob job)
    {
        var units = job.Shown.Units;
        var prediction = job.Report.Prediction;
        var shape = prediction.Shape;
        var isTaper = shape?.Ends is not null;
        return new(
            EngineVersion.Current,
            job.Shown.Fingerprint,
            job.Shown.Json,
            prediction.Wraps,
            units.Wording.OfOptional(prediction.WhyNot),
            Lists.Map(job.Report.Next, step => NextStepResult.From(step, job.Links, units, "/v1/forms/prediction")),
            prediction.GaveUp,
            prediction.Folds,
            prediction.FoldsReached,
            units.Length(prediction.LeverMm),
            units.Length(prediction.LeastLeverMm),
            units.Length(prediction.LongestLeverMm),
            units.Length(prediction.ClampGapMm),
            units.Length(shape?.RadiusMm),
            units.Length(shape?.WantedRadiusMm),
            isTaper ? null : UnitSystem.Degrees(shape?.Sweep),
            isTaper ? null : UnitSystem.Degrees(shape?.WantedSweep),
            PanelEndsResult.From(shape?.Ends, units),
            isTaper ? UnitSystem.Degrees(shape?.Sweep) : null,
            isTaper ? UnitSystem.Degrees(shape?.WantedSweep) : null,
            MissResult.From(shape, units),
            RippleResult.From(prediction.Ripple, units),
            prediction.Give is { } give ? GiveResult.From(give) : null,
            Lists.Map(shape?.Facets ?? [], facet => FacetOf(facet, units)),
            Lists.Map(prediction.Finishes, verdict => FinishOf(verdict, units)),
            PullOf(prediction, units),
            shape is null ? null : CurveOf(shape.Curve, units),
            Lists.Map(job.Report.Checks, check => CheckResult.From(check, units)),
            Lists.Map(job.Report.Safety, note => SafetyResult.From(note, units)),
            Lists.Map(job.Report.Basis, BasisResult.From),
            job.Links);
    }

    private static FacetResult FacetOf(PredictedFacet facet, UnitSystem units) => new(
        facet.Number,
        units.Length(facet.WidthMm),
        facet.IsFlatOfCurve,
        units.Length(facet.RippleMm),
        UnitSystem.Degrees(facet.Slope),
        units.Length(facet.RadiusMm));

    private static FinishResult FinishOf(FinishVerdict verdict, UnitSystem units) => new(
        verdict.Finish.Name, units.Length(verdict.Finish.RippleMm), UnitSystem.Degrees(verdict.Finish.Slope), verdict.Shows);

    private static PredictedPullResult PullOf(PanelPrediction prediction, UnitSystem units)
    {
        var steps = Lists.Map(prediction.Steps, step => PullStepResult.From(step, prediction.WidthMm, units));
        return prediction.Pull is { } pull
            ? new(
                steps,
                units.Force(pull.ForceN),
                units.Moment(pull.ClampMomentPerWidth),
                units.Force(pull.ClampLoadN),
                UnitSystem.Degrees(pull.EndAngle),
                units.Energy(pull.EnergyReleasedJ))
            : new(steps, null, null, null, null, null);
    }

    private static ReleasedCurveResult CurveOf(IReadOnlyList<ReleasedPoint> curve, UnitSystem units) => new(
        Lists.Map(curve, point => units.Point(point.Position)),
        Lists.Map(curve, point => units.Length(point.AlongMm)),
        Lists.Map(curve, point => UnitSystem.Degrees(point.Heading)),
        Lists.Map(curve, point => units.Curvature(point.Curvature)));
}

/// <summary>What one facet leaves in the panel.</summary>
/// <param name="Number">Number of the fold before it, from 1.</param>
/// <param name="Width">The facet on the contact side, mold line to mold line [mm or in].</param>
/// <param name="Flat">Whether the wanted curve is flat here, so that the facet makes no ripple.</param>
/// <param name="Ripple">Peak-to-valley height from its own smooth arc [mm or in]; null where not known.</param>
/// <param name="Slope">Largest slope against that arc [°]; null where not known.</param>
/// <param name="Radius">Mean radius over it on the face the curve was measured on [mm or in]; null where the panel is flat.</param>
internal sealed record FacetResult(int Number, double Width, bool Flat, double? Ripple, double? Slope, double? Radius);

/// <summary>Whether the facets show at a finish.</summary>
/// <param name="Finish">Name of the finish; <c>own</c> has the caller's limits.</param>
/// <param name="AllowedRipple">Allowed ripple [mm or in].</param>
/// <param name="AllowedSlope">Allowed slope [°].</param>
/// <param name="Shows">Whether a facet passes a limit; null where not known.</param>
internal sealed record FinishResult(string Finish, double AllowedRipple, double AllowedSlope, bool? Shows);

/// <summary>The pull.</summary>
/// <param name="Steps">The pull as it goes, a step for each fold reached.</param>
/// <param name="Force">Largest hand force, whole width [N or lbf]; null where the panel does not wrap.</param>
/// <param name="ClampMoment">Size of the largest moment per width at the clamp [N·mm/mm or lbf·in/in]; null where the panel does not
/// wrap.</param>
/// <param name="ClampLoad">What the clamp has to hold down against the first fold's push, whole width [N or lbf], never negative; null
/// where the panel does not wrap. Right up to the fold: M/b, M the moment there and b the clamp's depth. Further back: the largest
/// shear at the clamp; add M/b of the moment there.</param>
/// <param name="EndAngle">Angle of the sheet's end to pull to [°]; null where the panel does not wrap.</param>
/// <param name="EnergyReleased">Elastic energy let go when the pull ends [J or ft·lbf]; null where the panel does not wrap.</param>
internal sealed record PredictedPullResult(
    PullStepResult[] Steps, double? Force, double? ClampMoment, double? ClampLoad, double? EndAngle, double? EnergyReleased);

/// <summary>The mid surface of the panel let go: the first tangent point at (0, 0), the lead-in along x, turning left. All lists go
/// together.</summary>
/// <param name="Points">Places [x, y] [mm or in].</param>
/// <param name="Along">Distance along the panel [mm or in].</param>
/// <param name="Heading">Direction [°].</param>
/// <param name="Curvature">Curvature [1/mm or 1/in].</param>
internal sealed record ReleasedCurveResult(
    [property: JsonConverter(typeof(PairsConverter))] Pair[] Points, double[] Along, double[] Heading, double[] Curvature);
