using System.Reflection;
using FormApi.Http;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Features.Batches;

/// <summary>A batch on its way in and out: its lines are answered while the rest is still being sent.</summary>
/// <param name="limits">The limits.</param>
/// <param name="places">The places that batches share.</param>
/// <param name="logger">The log.</param>
/// <param name="stopping">The service is about to stop.</param>
internal sealed class BatchResult(Limits limits, BatchPlaces places, ILogger<BatchStream> logger, CancellationToken stopping)
    : IResult, IEndpointMetadataProvider
{
    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        AnswerMetadata.Add(builder, typeof(BatchLineAnswer), MediaTypes.Ndjson);

    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var (request, response) = (httpContext.Request, httpContext.Response);
        response.ContentType = MediaTypes.Ndjson;
        response.Headers.CacheControl = "no-store";
        var worker = new BatchWorker(limits, request.Path, RequestTrace.IdOf(httpContext), Preference.IsApplied(httpContext), logger);
        try
        {
            using var stream = new BatchStream(worker, places, limits, stopping);
            if (!await stream.RunAsync(request.BodyReader, response.BodyWriter, httpContext.RequestAborted))
                await places.TooMany().ExecuteAsync(httpContext);
        }
        catch (TimeoutException)
        {
            BatchLog.CallerDropped(logger, limits.UnreadSeconds);
            httpContext.Abort();
        }
        catch (Exception gone) when (
            gone is IOException || (gone is OperationCanceledException && httpContext.RequestAborted.IsCancellationRequested))
        {
            // The caller has disconnected; nobody reads an answer.
        }
    }
}
