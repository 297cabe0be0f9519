using FormApi.Features.Inspections;
using FormApi.Http;
using Forming.Results;
using Forming.Tolerances;

namespace FormApi.Features.Tolerances;

/// <summary><c>POST /v1/tolerances</c>: what the errors of single folds and marks add up to.</summary>
internal static class TolerancesEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Where to.</param>
    public static void MapTolerances(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/tolerances", Compute)
        .DescribeComputation<ToleranceRequest, ToleranceAnswer>(
            "computeTolerances",
            "Accuracy",
            "What the errors of single folds add up to: closing angle, end, radius.",
            "Takes the request of /v1/forms, or the stations of a form, and bias, scatter and mark scatter of a fold, each scatter as one standard deviation. "
            + "Answers closing angle, place of the end and mean radius with their spread, in closed form and exact for Gaussian errors; the scatter that a wanted tolerance leaves room for; and published general tolerances beside them.");

    private static IResult Compute(JsonBody<ToleranceRequest> body, CancellationToken cancellation)
    {
        if (body.Problem is { } problem)
            return problem;
        var request = body.Value.WithDefaults();
        var units = UnitSystem.Of(request.Units);
        try
        {
            var form = FoldedForm.Of(request, cancellation);
            var report = ToleranceReport.Of(form.Polygon, request.ToAccuracy(), request.ToTolerance(), cancellation);
            var shown = RawJson.Of(request, WireJson.Requests.ToleranceRequest);
            var fingerprint = Fingerprint.Of(shown.Utf8);
            return new AnswerResult<ToleranceAnswer>(
                ToleranceAnswers.From(report, form.Failed, units, shown, fingerprint), AnswerJson.Default.ToleranceAnswer, fingerprint);
        }
        catch (NoSolutionException none)
        {
            return Unsolved.Of(none, body, units);
        }
    }
}
