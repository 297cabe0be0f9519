using FormApi.Http.Problems;
using Microsoft.AspNetCore.Diagnostics;

namespace FormApi.Hosting;

/// <summary>Turns whatever escaped an endpoint into a problem that says nothing about the code.</summary>
internal sealed class ProblemHandler : IExceptionHandler
{
    /// <inheritdoc/>
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (httpContext.RequestAborted.IsCancellationRequested && exception is OperationCanceledException or IOException)
        {
            // The caller has disconnected; nobody reads an answer.
            httpContext.Response.StatusCode = StatusCodes.Status499ClientClosedRequest;
            return true;
        }

        var kind = exception is BadHttpRequestException refused ? ProblemKinds.OfStatus(refused.StatusCode) : ProblemKinds.Bug;
        await new ProblemResult(kind).ExecuteAsync(httpContext);
        return kind != ProblemKinds.Bug;
    }
}
