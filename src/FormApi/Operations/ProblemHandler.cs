using FormApi.Http;
using Microsoft.AspNetCore.Diagnostics;

namespace FormApi.Operations;

/// <summary>Turns whatever escaped an endpoint into a problem that says nothing about the code.</summary>
internal sealed class ProblemHandler : IExceptionHandler
{
    /// <inheritdoc/>
    public async ValueTask<bool> TryHandleAsync(HttpContext httpContext, Exception exception, CancellationToken cancellationToken)
    {
        if (httpContext.RequestAborted.IsCancellationRequested && exception is OperationCanceledException or IOException)
        {
            // The caller has gone; there is nobody to tell.
            httpContext.Response.StatusCode = StatusCodes.Status499ClientClosedRequest;
            return true;
        }

        var kind = exception is BadHttpRequestException refused ? Problems.OfStatus(refused.StatusCode) : Problems.Bug;
        await new ProblemResult(kind).ExecuteAsync(httpContext);
        return kind != Problems.Bug;
    }
}
