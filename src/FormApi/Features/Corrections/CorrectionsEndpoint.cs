using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Corrections;

/// <summary><c>POST /v1/panels/corrections</c>: a panel that came off wrong.</summary>
internal static class CorrectionsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapCorrections(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/panels/corrections", Correct)
        .Describe(
            "correctPanel",
            "Accuracy",
            "What explains a panel, which folds to change, and the next plan.",
            "Takes the request of /v1/forms, or the form's stations, and what was measured on the panel; simulates the pull.");

    /// <summary>Answers a request.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<AnswerResult<PanelCorrectionAnswer>, ProblemResult> Correct(
        JsonBody<PanelCorrectionRequest> body, CancellationToken cancellation) => body.Answer(request =>
    {
        var job = CorrectedJob.Of(request, cancellation);
        return new AnswerResult<PanelCorrectionAnswer>(
            PanelCorrectionAnswer.From(job), PanelCorrectionAnswerJson.Default.PanelCorrectionAnswer, job.Shown.Fingerprint);
    });
}
