using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Predictions;

/// <summary><c>POST /v1/forms/prediction</c>: how a panel comes off a form.</summary>
internal static class PredictionsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapPredictions(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/forms/prediction", Predict)
        .Describe(
            "predictPanel",
            "Forms",
            "How a panel comes off a form: shape, ripple, pull.",
            "Takes the request of /v1/forms, or with stations a form that already exists, and pulls the panel over its facets in simulation: "
            + "the curve it keeps when let go, its miss from the wanted one, the ripple of every facet and the finishes at which it shows, the pull. "
            + "A panel that would curl up and not touch the folds in order is answered with 200 too: wraps is false, with the reason and the longest lever. "
            + "The model is not yet checked against measured panels.");

    /// <summary>Answers a request.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<AnswerResult<PredictionAnswer>, ProblemResult> Predict(
        JsonBody<PredictionRequest> body, CancellationToken cancellation) => body.Answer(request =>
    {
        var job = PredictedJob.Of(request, cancellation);
        return new AnswerResult<PredictionAnswer>(
            PredictionAnswer.From(job), PredictionAnswerJson.Default.PredictionAnswer, job.Shown.Fingerprint);
    });
}
