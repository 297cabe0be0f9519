using FormApi.Features.Forms;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Forming.Estimates;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Estimates;

/// <summary><c>POST /v1/estimates</c>: what a form and a batch of panels take in time and money.</summary>
internal static class EstimatesEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapEstimates(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/estimates", Compute)
        .Describe(
            "estimateJob",
            "Estimates",
            "Time and price of a form and its panels, for every count asked, against other ways to make them.",
            "Takes the request of /v1/forms and the shop's own rates. Answers the time to build the form and to make a panel by element, and a row for every count of pieces: "
            + "sheet nested on stock, trial panels, set-up, overhead, minimum charge, the price in all and for each, low, likely and high. "
            + "Compares with bumping the panel directly, and with rolling and another method where their rates are given: from how many panels on is the form cheaper? "
            + "Every value that is left out is an assumption and is listed; the caller's own values win. "
            + "A form that cannot be made is estimated too, with its verdict and its failed checks.");

    /// <summary>Answers a request.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<AnswerResult<EstimateAnswer>, ProblemResult> Compute(
        JsonBody<EstimateRequest> body, CancellationToken cancellation) => body.Answer(given =>
    {
        var request = EstimateDefaults.Apply(given);
        var estimate = Estimate.Of(EstimateSpecs.From(request, cancellation));
        var shown = NormalizedRequest.Of(request);
        return new AnswerResult<EstimateAnswer>(
            EstimateAnswer.From(estimate, request.Currency, FormLinks.OfPlanned(request.AsForm(), estimate.Failed.Count == 0), shown),
            EstimateAnswerJson.Default.EstimateAnswer,
            shown.Fingerprint);
    });
}
