using FormApi.Features.Forms;
using FormApi.Http;
using Forming;
using Forming.Plans;
using Forming.Prediction;
using Forming.Results;

namespace FormApi.Features.Predictions;

/// <summary>A request that was predicted, ready to be answered.</summary>
/// <param name="Report">The prediction with its checks and grounds.</param>
/// <param name="Panel">The panel.</param>
/// <param name="Units">The caller's units.</param>
/// <param name="Request">The request with every default shown, as JSON.</param>
/// <param name="Fingerprint">Fingerprint of request and engine.</param>
internal sealed record PredictedJob(
    PredictionReport Report, PanelSpec Panel, UnitSystem Units, RawRequest<PredictionRequest> Request, string Fingerprint)
{
    /// <summary>Predicts a request, or says what stands in the way.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="answer">Answers the job.</param>
    /// <param name="cancellation">Ends the work early.</param>
    public static IResult Answer(JsonBody<PredictionRequest> body, Func<PredictedJob, IResult> answer, CancellationToken cancellation)
    {
        if (body.Problem is { } problem)
            return problem;
        var request = PredictionDefaults.Apply(body.Value);
        var units = UnitSystem.Of(request.Units);
        try
        {
            var (report, panel) = request.Stations is { } stations
                ? OverStanding(request, stations, units, cancellation)
                : OverPlanned(FormSpecs.From(FormDefaults.Apply(PredictionDefaults.AsForm(request))), cancellation);
            var shown = RawJson.Of(request, WireJson.Requests.PredictionRequest).Utf8;
            return answer(new(report, panel, units, new(shown), Http.Fingerprint.Of(shown)));
        }
        catch (NoSolutionException none)
        {
            return Unsolved.Of(none, body, UnitSystem.Of(body.Value.Units));
        }
    }

    private static (PredictionReport Report, PanelSpec Panel) OverPlanned(FormSpecs specs, CancellationToken cancellation) =>
        (PredictionReport.Of(specs.Panel, specs.Form, specs.Brake, specs.Marks, cancellation), specs.Panel);

    private static (PredictionReport Report, PanelSpec Panel) OverStanding(
        PredictionRequest request, IReadOnlyList<StandingStationInput> stations, UnitSystem units, CancellationToken cancellation)
    {
        var panel = FormSpecs.PanelFrom(FormDefaults.Apply(request.Panel, units), units);
        var sheet = FormSpecs.SheetFrom(request.Form, units);
        var form = new StandingForm(
            [.. stations.SkipLast(1).Select(station => units.ToMm(station.FacetAfter))],
            [.. stations.Select(station => Angle.FromDegrees(station.Angle).Radians)],
            units.ToMm(request.Form.FoldRadius) + sheet.ThicknessMm);
        var job = StandingJob.Of(form, units.ToMm(request.Form.LeadOut), request.Ends!.Value, panel);
        return (PredictionReport.Of(job, sheet.Material.Family, cancellation), panel);
    }
}
