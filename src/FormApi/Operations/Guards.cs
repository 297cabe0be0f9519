using System.Threading.RateLimiting;
using FormApi.Http;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.AspNetCore.ResponseCompression;

namespace FormApi.Operations;

/// <summary>What keeps the service answering: limits, timeouts, and a problem for whatever goes wrong.</summary>
internal static class Guards
{
    /// <summary>Name of the limits on calculations.</summary>
    public const string Compute = "compute";

    /// <summary>Adds the limits, the problems and the compression.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddGuards(this WebApplicationBuilder builder)
    {
        var section = builder.Configuration.GetSection(Limits.Section);
        builder.Services.AddOptions<Limits>().Bind(section).ValidateDataAnnotations().ValidateOnStart();
        var limits = section.Get<Limits>() ?? new Limits();

        // The body's own reader names the limit; this one stops what comes after it.
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxRequestBodySize = limits.BodyBytes + 1L;
        });
        builder.Services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        builder.Services.AddExceptionHandler<ProblemHandler>();
        builder.Services.AddRateLimiter(options =>
        {
            options.AddConcurrencyLimiter(Compute, queue =>
            {
                queue.PermitLimit = limits.Concurrent;
                queue.QueueLimit = limits.Queued;
                queue.QueueProcessingOrder = QueueProcessingOrder.OldestFirst;
            });
            options.OnRejected = (rejected, _) => new(new ProblemResult(Problems.TooMany).ExecuteAsync(rejected.HttpContext));
        });
        builder.Services.AddRequestTimeouts(options => options.AddPolicy(Compute, new RequestTimeoutPolicy
        {
            Timeout = TimeSpan.FromSeconds(limits.Seconds),
            TimeoutStatusCode = StatusCodes.Status503ServiceUnavailable,
            WriteTimeoutResponse = context => new ProblemResult(
                Problems.TooSlow,
                $"It took longer than {limits.Seconds} s; the setting is {Limits.Section}:{nameof(Limits.Seconds)}.").ExecuteAsync(context),
        }));
        builder.Services.AddResponseCompression(options =>
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

    /// <summary>Puts the guards in front of the endpoints, outermost first.</summary>
    /// <param name="app">The service.</param>
    public static void UseGuards(this WebApplication app)
    {
        app.UseMiddleware<RequestLog>();
        app.UseResponseCompression();
        app.UseExceptionHandler(new ExceptionHandlerOptions { ExceptionHandler = _ => Task.CompletedTask });
        app.UseStatusCodePages(context =>
            new ProblemResult(Problems.OfStatus(context.HttpContext.Response.StatusCode)).ExecuteAsync(context.HttpContext));
        app.UseRouting();
        app.Use(MediaTypes.Negotiate);
        app.UseRateLimiter();
        app.UseRequestTimeouts();
    }
}
