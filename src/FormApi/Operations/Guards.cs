using System.Threading.RateLimiting;
using FormApi.Features.Links;
using FormApi.Http;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Options;

namespace FormApi.Operations;

/// <summary>What keeps the service answering: limits, timeouts, and a problem for whatever goes wrong.</summary>
internal static class Guards
{
    /// <summary>Name of the limits on calculations.</summary>
    public const string Compute = "compute";

    private const string Stream = "stream";

    /// <summary>Adds the limits, the problems and the compression.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddGuards(this WebApplicationBuilder builder)
    {
        // Batches keep a thread for each core busy; what waits for the network finds as many others at once.
        ThreadPool.GetMinThreads(out var working, out var completing);
        ThreadPool.SetMinThreads(Math.Max(working, 3 * Environment.ProcessorCount), completing);
        var services = builder.Services;
        services.AddOptions<Limits>().BindConfiguration(Limits.Section).ValidateDataAnnotations().ValidateOnStart();
        services.AddOptions<PublicAddress>().BindConfiguration(PublicAddress.Section).ValidateDataAnnotations().ValidateOnStart();
        services.AddOptions<KestrelServerOptions>().Configure<IOptions<Limits>>(LimitServer);
        services.AddOptions<RateLimiterOptions>().Configure<IOptions<Limits>>(LimitConcurrency);
        services.AddOptions<RequestTimeoutOptions>().Configure<IOptions<Limits>>(LimitTime);
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddExceptionHandler<ProblemHandler>();
        services.AddRateLimiter(_ => { });
        services.AddRequestTimeouts();
        services.AddResponseCompression(options =>
        {
            options.EnableForHttps = true;
            options.MimeTypes = ["application/json", ProblemResult.MediaType, "application/yaml", "text/plain"];
            options.Providers.Add<BrotliCompressionProvider>();
            options.Providers.Add<GzipCompressionProvider>();
        });
    }

    /// <summary>The group of routes that calculate, under the limits.</summary>
    /// <param name="app">The service.</param>
    public static RouteGroupBuilder MapComputations(this WebApplication app)
    {
        var group = app.MapGroup("");
        group.RequireRateLimiting(Compute).WithRequestTimeout(Compute);
        return group;
    }

    /// <summary>The group of routes that calculate for as long as the caller sends, each part under limits of its own.</summary>
    /// <param name="app">The service.</param>
    public static RouteGroupBuilder MapStreams(this WebApplication app)
    {
        var group = app.MapGroup("");
        group.RequireRateLimiting(Stream);
        return group;
    }

    /// <summary>A calculation that took too long.</summary>
    /// <param name="limits">The limits.</param>
    public static ProblemResult TooSlow(Limits limits) =>
        new(Problems.TooSlow, $"It took longer than {limits.Seconds} s; the setting is {Limits.Section}:{nameof(Limits.Seconds)}.");

    /// <summary>Puts the guards in front of the endpoints, outermost first.</summary>
    /// <param name="app">The service.</param>
    public static void UseGuards(this WebApplication app)
    {
        app.UseMiddleware<RequestLog>();
        app.UseResponseCompression();
        app.UseExceptionHandler(new ExceptionHandlerOptions { ExceptionHandler = _ => Task.CompletedTask });
        app.UseStatusCodePages(context =>
        {
            var kind = Problems.OfStatus(context.HttpContext.Response.StatusCode);
            return new ProblemResult(kind, kind.Explanation).ExecuteAsync(context.HttpContext);
        });
        app.Use(HeadRequests.AnswerAsGet);
        app.UseRouting();
        app.CountRequests();
        app.Use(MediaTypes.Negotiate);
        app.UseRateLimiter();
        app.UseRequestTimeouts();
    }

    private static void LimitServer(KestrelServerOptions server, IOptions<Limits> limits)
    {
        server.AddServerHeader = false;
        // The body's own reader names the limit; this one stops what comes after it.
        server.Limits.MaxRequestBodySize = limits.Value.BodyBytes + 1L;
    }

    private static void LimitConcurrency(RateLimiterOptions options, IOptions<Limits> limits)
    {
        options.AddConcurrencyLimiter(Compute, queue =>
        {
            queue.PermitLimit = limits.Value.Concurrent;
            queue.QueueLimit = limits.Value.Queued;
            queue.QueueProcessingOrder = QueueProcessingOrder.OldestFirst;
        });
        options.AddConcurrencyLimiter(Stream, queue => queue.PermitLimit = limits.Value.Batches);
        options.OnRejected = (rejected, _) => new(new ProblemResult(Problems.TooMany).ExecuteAsync(rejected.HttpContext));
    }

    private static void LimitTime(RequestTimeoutOptions options, IOptions<Limits> limits) => options.AddPolicy(Compute, new RequestTimeoutPolicy
    {
        Timeout = TimeSpan.FromSeconds(limits.Value.Seconds),
        TimeoutStatusCode = StatusCodes.Status503ServiceUnavailable,
        WriteTimeoutResponse = context => TooSlow(limits.Value).ExecuteAsync(context),
    });
}
