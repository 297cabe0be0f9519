using System.Diagnostics;
using FormApi.Http;
using FormApi.Http.Callers;
using Microsoft.AspNetCore.Http.Features;
using Serilog.Events;

namespace FormApi.Hosting;

/// <summary>One line a request: route, status, duration, fingerprint, trace id; never the body.</summary>
/// <param name="next">The rest of the pipeline.</param>
/// <param name="logger">The log.</param>
internal sealed class RequestLog(RequestDelegate next, Serilog.ILogger logger)
{
    private const string Line = "{Method} {Route} {Status} {Milliseconds} ms {Fingerprint} {TraceId} {Caller}";

    /// <summary>Passes a request on and logs it.</summary>
    /// <param name="context">The request.</param>
    public async Task InvokeAsync(HttpContext context)
    {
        var started = Stopwatch.GetTimestamp();
        try
        {
            await next(context);
        }
        finally
        {
            // An answer that has begun keeps its status, whether or not anybody took it.
            if (context.RequestAborted.IsCancellationRequested)
                context.Features.Get<IHttpMetricsTagsFeature>()?.Tags.Add(new("formapi.aborted", true));
            var level = LevelOf(context);
            if (logger.IsEnabled(level))
                Write(context, level, Stopwatch.GetElapsedTime(started));
        }
    }

    /// <summary>Whether a request is one of those that orchestrators send all day.</summary>
    /// <param name="context">The request.</param>
    public static bool IsOfOperators(HttpContext context) =>
        context.Request.Path.StartsWithSegments("/health", StringComparison.OrdinalIgnoreCase) || context.Request.Path == Metrics.Path;

    private static LogEventLevel LevelOf(HttpContext context) => context.Response.StatusCode switch
    {
        >= 500 and not 503 => LogEventLevel.Error,
        _ when IsOfOperators(context) => LogEventLevel.Debug,
        _ => LogEventLevel.Information,
    };

    private void Write(HttpContext context, LogEventLevel level, TimeSpan elapsed)
    {
        var route = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "none";
        logger.Write(
            level,
            Line,
            context.Request.Method,
            route,
            context.Response.StatusCode,
            Math.Round(elapsed.TotalMilliseconds, 3),
            RequestTrace.FingerprintOf(context),
            RequestTrace.IdOf(context),
            Caller.NameOf(context));
    }
}
