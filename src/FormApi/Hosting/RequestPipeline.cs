using FormApi.Hosting.Settings;
using FormApi.Http;
using FormApi.Http.Callers;
using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Results;
using FormApi.Http.Rules;
using Microsoft.AspNetCore.ResponseCompression;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Options;

namespace FormApi.Hosting;

/// <summary>What keeps the service answering: limits, timeouts, and a problem for whatever goes wrong.</summary>
internal static class RequestPipeline
{
    /// <summary>Adds the limits, the problems and the compression.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddRequestPipeline(this WebApplicationBuilder builder)
    {
        // Batches keep a thread for each core busy, single requests as many; what waits for the network finds as many others at once.
        ThreadPool.GetMinThreads(out var working, out var completing);
        ThreadPool.SetMinThreads(Math.Max(working, 3 * Environment.ProcessorCount), completing);
        FieldNames.SpellAsOnTheWire();
        var services = builder.Services;
        services.AddOptions<Limits>().BindConfiguration(Limits.Section);
        services.AddOptions<PublicAddress>().BindConfiguration(PublicAddress.Section);
        services.AddOptions<DrainSettings>().BindConfiguration(DrainSettings.Section);
        services.AddOptions<KestrelServerOptions>().Configure<IOptions<Limits>, Serilog.ILogger>(LimitServer);
        services.AddSingleton<CallerLimits>();
        services.AddSingleton<Turns>();
        services.AddHostedService<DrainService>();
        services.AddOptions<HostOptions>().Configure<IOptions<DrainSettings>>(
            (host, drain) => host.ShutdownTimeout = TimeSpan.FromSeconds(drain.Value.Seconds + drain.Value.EndSeconds));
        services.AddSingleton<TurnsCount>();
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddExceptionHandler<ProblemHandler>();
        services.AddRequestDecompression();
        services.AddResponseCompression(options =>
        {
            options.EnableForHttps = true;
            options.MimeTypes = ["application/json", MediaTypes.Ndjson, ProblemResult.MediaType, "application/yaml", "text/plain", "text/html", "text/css", "text/javascript"];
            options.Providers.Add<BrotliCompressionProvider>();
            options.Providers.Add<GzipCompressionProvider>();
        });
    }

    /// <summary>The group of routes that calculate, each call in its turn and under its deadline.</summary>
    /// <param name="routes">Destination.</param>
    public static RouteGroupBuilder MapComputations(this RouteGroupBuilder routes)
    {
        var group = routes.MapGroup("").WithMetadata(new InTurn());
        var services = ((IEndpointRouteBuilder)routes).ServiceProvider;
        var count = services.GetRequiredService<TurnsCount>();
        group.AddEndpointFilter(count.AskAsync);
        group.AddEndpointFilter(services.GetRequiredService<Turns>().CallAsync);
        group.AddEndpointFilter(count.RunAsync);
        return group.Refuses(429, 503);
    }

    /// <summary>Puts the guards in front of the endpoints, outermost first.</summary>
    /// <param name="app">The service.</param>
    public static void UseRequestPipeline(this WebApplication app)
    {
        app.UseMiddleware<RequestLog>();
        app.UseSafeHeaders();
        app.UseResponseCompression();
        app.UseExceptionHandler(new ExceptionHandlerOptions { ExceptionHandler = _ => Task.CompletedTask });
        app.UseStatusCodePages(context =>
        {
            var kind = ProblemKinds.OfStatus(context.HttpContext.Response.StatusCode);
            return new ProblemResult(kind, kind.Text).ExecuteAsync(context.HttpContext);
        });
        app.Use(HeadRequests.AnswerAsGet);
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.Use(app.Services.GetRequiredService<Turns>().ShedAsync);
        app.UseRequestDecompression();
        app.Use(MediaTypes.Negotiate);
    }

    private static void LimitServer(KestrelServerOptions server, IOptions<Limits> limits, Serilog.ILogger logger)
    {
        server.AddServerHeader = false;
        // The body's own reader names the limit; this one stops what comes after it.
        server.Limits.MaxRequestBodySize = limits.Value.BodyBytes + 1L;
        // So does it with the rate, which a batch has not.
        server.Limits.MinRequestBodyDataRate = null;
        server.ConfigureEndpointDefaults(listen => listen.Use(next => connection =>
        {
            connection.Transport = ServerRefusals.Explained(HalfClosed.Kept(connection, limits.Value), connection.Transport.Output, logger);
            return next(connection);
        }));
    }
}
