using System.Diagnostics;

namespace FormApi.Operations;

/// <summary>One line a request: route, status, duration, fingerprint, trace id; never the body.</summary>
/// <param name="next">The rest of the pipeline.</param>
/// <param name="logger">The log.</param>
internal sealed partial class RequestLog(RequestDelegate next, ILogger<RequestLog> logger)
{
    /// <summary>Where an endpoint leaves the fingerprint of its answer.</summary>
    private static readonly object FingerprintKey = new();

    /// <summary>The trace id of a request: the caller's where it sent a <c>traceparent</c>.</summary>
    /// <param name="context">The request.</param>
    public static string TraceIdOf(HttpContext context) =>
        Activity.Current?.TraceId.ToHexString() ?? context.TraceIdentifier;

    /// <summary>Leaves a fingerprint for the log.</summary>
    /// <param name="context">The request.</param>
    /// <param name="fingerprint">The fingerprint.</param>
    public static void Remember(HttpContext context, string fingerprint) => context.Items[FingerprintKey] = fingerprint;

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
            var level = LevelOf(context);
            if (logger.IsEnabled(level))
                Write(context, level, Stopwatch.GetElapsedTime(started));
        }
    }

    private static LogLevel LevelOf(HttpContext context) => context.Response.StatusCode switch
    {
        >= 500 and not 503 => LogLevel.Error,
        _ when context.Request.Path.StartsWithSegments("/health", StringComparison.OrdinalIgnoreCase) => LogLevel.Debug,
        _ => LogLevel.Information,
    };

    private void Write(HttpContext context, LogLevel level, TimeSpan elapsed)
    {
        var route = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "none";
        context.Items.TryGetValue(FingerprintKey, out var fingerprint);
        var (milliseconds, traceId) = (Math.Round(elapsed.TotalMilliseconds, 3), TraceIdOf(context));
        var (method, status) = (context.Request.Method, context.Response.StatusCode);
        Line(
            logger,
            level,
            method,
            route,
            status,
            milliseconds,
            fingerprint as string,
            traceId);
    }

    [LoggerMessage(Message = "{Method} {Route} {Status} {Milliseconds} ms {Fingerprint} {TraceId}")]
    private static partial void Line(
        ILogger logger, LogLevel level, string method, string route, int status, double milliseconds, string? fingerprint, string traceId);
}
