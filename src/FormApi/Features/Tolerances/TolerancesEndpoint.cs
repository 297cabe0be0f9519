using FormApi.Features.Forms;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Forming.Tolerances;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Tolerances;

/// <summary><c>POST /v1/tolerances</c>: what the errors of single folds and marks add up to.</summary>
internal static class TolerancesEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapTolerances(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/tolerances", Compute)
        .Describe(
            "computeTolerances",
            "Accuracy",
            "What the errors of single folds add up to: closing angle, end, radius.",
            "Takes the request of /v1/forms, or the stations of a form, and bias, scatter and mark scatter of a fold, each scatter as one standard deviation. "
            + "Answers closing angle, place of the end and mean radius with their spread, in closed form and exact for Gaussian errors; the scatter that a wanted tolerance leaves room for; and published general tolerances beside them.");

    private static Results<AnswerResult<ToleranceAnswer>, ProblemResult> Compute(
        JsonBody<ToleranceRequest> body, CancellationToken cancellation) => body.Answer(given =>
    {
        var request = given.WithDefaults();
        var form = FoldedForm.Of(request, cancellation);
        var (accuracy, wanted) = (request.ToAccuracy(), request.ToTolerance());
        var report = form.Taper is { } taper
            ? ToleranceReport.Of(taper.Form, accuracy, wanted, cancellation)
            : ToleranceReport.Of(form.Polygon, accuracy, wanted, cancellation);
        var shown = NormalizedRequest.Of(request);
        return new AnswerResult<ToleranceAnswer>(
            ToleranceAnswer.From(report, form.Failed, form.LinksOf(request), shown),
            ToleranceAnswerJson.Default.ToleranceAnswer,
            shown.Fingerprint);
    });
}
