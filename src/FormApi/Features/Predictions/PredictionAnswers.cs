using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Units;
using Forming.Prediction;

namespace FormApi.Features.Predictions;

/// <summary>From a prediction to the answer, in the caller's units.</summary>
internal static class PredictionAnswers
{
    /// <summary>The answer to a request.</summary>
    /// <param name="job">The predicted request.</param>
    public static PredictionAnswer From(PredictedJob job)
    {
        var units = job.Shown.Units;
        var prediction = job.Report.Prediction;
        var shape = prediction.Shape;
        return new(
            EngineVersion.Current,
            job.Shown.Fingerprint,
            job.Shown.Json,
            prediction.Wraps,
            units.Wording.OfOptional(prediction.WhyNot),
            prediction.GaveUp,
            prediction.Folds,
            prediction.FoldsReached,
            units.Length(prediction.LeverMm),
            units.Length(prediction.LeastLeverMm),
            units.Length(prediction.LongestLeverMm),
            units.Length(prediction.ClampGapMm),
            units.Length(shape?.RadiusMm),
            units.Length(shape?.WantedRadiusMm),
            UnitSystem.Degrees(shape?.Sweep),
            UnitSystem.Degrees(shape?.WantedSweep),
            shape is null ? null : new(units.Length(shape.MissMm), units.Length(shape.HeldMissMm)),
            RippleOf(prediction.Ripple, units),
            FormAnswers.Map(shape?.Facets ?? [], facet => FacetOf(facet, units)),
            FormAnswers.Map(prediction.Finishes, verdict => FinishOf(verdict, units)),
            PullOf(prediction, job.Panel.WidthMm, units),
            shape is null ? null : CurveOf(shape.Curve, units),
            FormAnswers.Map(job.Report.Checks, check => FormAnswers.CheckOf(check, units)),
            FormAnswers.Map(job.Report.Safety, note => new SafetyResult(note.Id, note.Level, units.Wording.Of(note.Text))),
            FormAnswers.Map(job.Report.Basis, basis => new BasisResult(basis.Quantity, basis.Method, basis.Source, basis.Status)),
            job.Links);
    }

    private static RippleResult RippleOf(PredictedRipple ripple, UnitSystem units) =>
        new(ripple.Known, ripple.WhyUnknown, units.Length(ripple.HeightMm), UnitSystem.Degrees(ripple.Slope), ripple.Facet);

    private static FacetResult FacetOf(PredictedFacet facet, UnitSystem units) => new(
        facet.Number,
        units.Length(facet.WidthMm),
        facet.IsFlatOfCurve,
        units.Length(facet.RippleMm),
        UnitSystem.Degrees(facet.Slope),
        units.Length(facet.RadiusMm));

    private static FinishResult FinishOf(FinishVerdict verdict, UnitSystem units) => new(
        verdict.Finish.Name, units.Length(verdict.Finish.RippleMm), UnitSystem.Degrees(verdict.Finish.Slope), verdict.Shows);

    private static PredictedPullResult PullOf(PanelPrediction prediction, double widthMm, UnitSystem units)
    {
        var steps = FormAnswers.Map(prediction.Steps, step => new PullStepResult(
            step.Fold, UnitSystem.Degrees(step.EndAngle), units.Force(step.ForcePerWidth * widthMm), units.Moment(step.ClampMomentPerWidth)));
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
        FormAnswers.Map(curve, point => units.Point(point.Position)),
        FormAnswers.Map(curve, point => units.Length(point.AlongMm)),
        FormAnswers.Map(curve, point => UnitSystem.Degrees(point.Heading)),
        FormAnswers.Map(curve, point => units.Curvature(point.Curvature)));
}
