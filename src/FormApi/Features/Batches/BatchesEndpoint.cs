using FormApi.Http;
using FormApi.Http.Callers;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;

namespace FormApi.Features.Batches;

/// <summary><c>POST /v1/batches</c>: many requests in one body, a line each, answered as they come.</summary>
internal static class BatchesEndpoint
{
    /// <summary>Adds the places that batches share.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddBatches(this WebApplicationBuilder builder) =>
        builder.Services.AddSingleton(TimeProvider.System).AddSingleton<BatchPlaces>();

    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapBatches(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/batches", Answer)
        .Describe("computeBatch", "Batches", "Many requests in one body, a line each, answered in the same order.")
        .Refuses(413, 415, 429, 503)
        .Accepts<BatchLine>(MediaTypes.Ndjson)
        .WithDescription(
            "Newline-delimited JSON in and out: each line is one request for one operation, each answer one line with the status that the operation alone gives. "
            + "Lines are calculated on every core and answered in order, while the rest is still being sent; a line that cannot be answered gets a problem in its place and does not affect the others. "
            + "Read while you send: unread answers block the lines behind them, and a caller who leaves the buffers full for Limits:UnreadSeconds (30 s) is dropped. "
            + "Where nothing is sent for Limits:UnsentSeconds (30 s), or the body breaks off, the last answer says so; where the service is stopped, it has resumeFrom. "
            + "A line may have Limits:BatchLineBytes (1 MiB), a batch Limits:BatchLines (100000 lines), each line Limits:Seconds (10 s); Limits:Batches (4) with lines under way run at once; a batch that waits for its caller does not count.")
        .WithMetadata(new DisableRequestSizeLimitAttribute());

    private static Results<BatchResult, ProblemResult> Answer(
        HttpRequest request,
        IOptions<Limits> options,
        BatchPlaces places,
        CallerLimits callers,
        IHostApplicationLifetime lifetime,
        ILogger<BatchStream> logger)
    {
        if (!RequestMedia.Is(request, MediaTypes.Ndjson))
            return RequestMedia.Refusal(request.HttpContext, MediaTypes.Ndjson);
        if (callers.Count(request.HttpContext) is { } tooMany)
            return tooMany;
        return lifetime.ApplicationStopping.IsCancellationRequested
            ? new ProblemResult(ProblemKinds.Stopping)
            : new BatchResult(options.Value, places, logger, lifetime.ApplicationStopping);
    }
}
