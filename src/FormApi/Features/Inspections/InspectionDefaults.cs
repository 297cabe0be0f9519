using FormApi.Features.Forms;
using FormApi.Features.Predictions;
using FormApi.Http.Units;
using Forming.Inspection;

namespace FormApi.Features.Inspections;

/// <summary>Fills in what an inspection left out.</summary>
internal static class InspectionDefaults
{
    private const double Closing = 1;
    private const double VertexMm = 0.8;
    private const double StandingStep = 0.5;
    private const int MaxSteps = 4;

    /// <summary>The request with every default shown, still in the caller's units.</summary>
    /// <param name="request">A request that passed its rules.</param>
    public static InspectionRequest Apply(InspectionRequest request)
    {
        var units = UnitSystem.Of(request.Units);
        var whole = request.Stations is { } stations
            ? request with
            {
                Panel = request.Panel is { } panel ? PredictionDefaults.StandingPanel(panel, units) : null,
                Form = request.Panel is { } pulled
                    ? PredictionDefaults.StandingForm(request.Form!, pulled)
                    : request.Form! with { GaugeSystem = FormDefaults.GaugeSystemOf(request.Form) },
                Ends = request.Panel is null ? null : request.Ends ?? PredictionDefaults.EndsOf(stations),
            }
            : Planned(request);
        return whole with
        {
            Tolerance = new(request.Tolerance?.Closing ?? Closing, request.Tolerance?.Vertex ?? units.Length(VertexMm)),
            Corrections = new(
                request.Corrections?.Step ?? whole.Brake?.StopResolution ?? StandingStep,
                request.Corrections?.Direction ?? CorrectionDirection.CloseOnly,
                request.Corrections?.MaxSteps ?? MaxSteps),
        };
    }

    private static InspectionRequest Planned(InspectionRequest request)
    {
        var form = FormDefaults.Apply(FoldedForm.AsForm(request));
        return request with { Panel = form.Panel, Form = form.Form, Brake = form.Brake, Marks = form.Marks };
    }
}
