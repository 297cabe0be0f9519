using FormApi.Http;
using Forming.Prediction;
using OpenTelemetry.Metrics;

namespace FormApi.Hosting;

/// <summary>
/// <c>/metrics</c>: requests by route, status and problem, calculations by outcome, turns, the engine's work and the process itself,
/// named as OpenTelemetry names them and written as Prometheus reads them.
/// </summary>
internal static class Metrics
{
    /// <summary>Where the values are read.</summary>
    public const string Path = "/metrics";

    // Room is taken at once for as many series as an instrument may have, and only the first is split by route, status and problem.
    private const int MostRequestSeries = 2000;
    private const int MostSeries = 200;

    // A quick plan takes less than the smallest of the usual bounds [s].
    private static readonly double[] DurationBounds = [0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

    /// <summary>Adds what is measured, and that it can be read.</summary>
    /// <param name="metrics">The metrics being built.</param>
    public static void Measure(this MeterProviderBuilder metrics) => metrics
        .AddMeter("Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel", "System.Runtime", Calculations.Meter, EngineWork.Meter)
        .AddView(instrument => instrument.Name switch
        {
            "http.server.request.duration" => new ExplicitBucketHistogramConfiguration
            {
                Boundaries = DurationBounds,
                CardinalityLimit = MostRequestSeries,
            },
            // Each is a counter of some kind, or a histogram with bounds of its own.
            _ => new MetricStreamConfiguration { CardinalityLimit = MostSeries },
        })
        .AddPrometheusExporter(options => options.ScrapeResponseCacheDurationMilliseconds = 0);

    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapMetrics(this IEndpointRouteBuilder routes) => routes.MapPrometheusScrapingEndpoint(Path).ExcludeFromDescription();
}
