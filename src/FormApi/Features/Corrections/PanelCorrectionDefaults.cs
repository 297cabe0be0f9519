using FormApi.Features.Forms;
using FormApi.Features.Predictions;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Corrections;
using Forming.Inspection;

namespace FormApi.Features.Corrections;

/// <summary>Fills in what a measured panel's request left out.</summary>
internal static class PanelCorrectionDefaults
{
    private const double StandingStep = 0.5;
    private const double Reach = 2; // [°] a fold
    private const int LeastMostSteps = 4;
    private const double FoldScatter = 0.1; // [°] of measured folds

    private static readonly MeasuredPanel Usual = new();

    /// <summary>The request with every default shown, still in the caller's units.</summary>
    /// <param name="request">A request that passed its rules.</param>
    public static PanelCorrectionRequest Apply(PanelCorrectionRequest request)
    {
        var units = UnitSystem.Of(request.Units);
        var whole = request.Stations is null ? Planned(request) : Standing(request, units);
        var (measured, step) = (request.Measured, request.Corrections?.Step ?? whole.Brake?.StopResolution ?? StandingStep);
        return whole with
        {
            Measured = measured with
            {
                SweepError = measured.SweepError ?? (measured.Sweep is null ? null : Usual.SweepError.Degrees),
                RadiusError = measured.RadiusError ?? (measured.Radius is null ? null : units.Length(Usual.RadiusErrorMm)),
                PointError = measured.PointError ?? (measured.Points is null ? null : units.Length(Usual.PointErrorMm)),
            },
            Corrections = new(
                step,
                request.Corrections?.Direction ?? CorrectionDirection.Both,
                request.Corrections?.MaxSteps
                    ?? (int)Math.Min(Ranges.CorrectionSteps.Max, Math.Max(LeastMostSteps, Math.Ceiling(Reach / step)))),
        };
    }

    private static PanelCorrectionRequest Standing(PanelCorrectionRequest request, UnitSystem units)
    {
        var judged = FormDefaults.Apply(request.Panel, units);
        return request with
        {
            Panel = PredictionDefaults.StandingPanel(request.Panel, units) with
            {
                Tolerance = judged.Tolerance,
                Scatter = judged.Scatter! with { FoldAngle = request.Panel.Scatter?.FoldAngle ?? FoldScatter },
            },
            Form = PredictionDefaults.StandingForm(request.Form!, request.Panel),
            Ends = request.Ends ?? PredictionDefaults.EndsOf(request.Stations!),
        };
    }

    private static PanelCorrectionRequest Planned(PanelCorrectionRequest request)
    {
        var form = FormDefaults.Apply(FoldedForm.AsForm(request));
        return request with { Panel = form.Panel, Form = form.Form, Brake = form.Brake, Marks = form.Marks };
    }
}
