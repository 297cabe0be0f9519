using System.Collections.Frozen;
using Prometheus;

namespace FormApi.Hosting;

/// <summary>
/// <c>/metrics</c>: how many requests of each route, how they ended, how long they took, and the process itself, as Prometheus reads it.
/// </summary>
internal static class Metrics
{
    /// <summary>Where the values are read.</summary>
    public const string Path = "/metrics";

    // Every method is a series of its own that is kept for good, and a caller may make up as many as it likes.
    private static readonly FrozenSet<string> Methods = FrozenSet.ToFrozenSet(["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE"], StringComparer.Ordinal);

    /// <summary>Counts and times what passes; between routing and everything that may refuse.</summary>
    /// <param name="app">The service.</param>
    public static void CountRequests(this WebApplication app) => app.UseWhen(IsCounted, counted => counted.UseHttpMetrics(options =>
    {
        options.InProgress.Enabled = false;
        options.RequestCount.Enabled = false; // The duration counts too.
    }));

    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapMetrics(this IEndpointRouteBuilder routes) => routes.MapMetrics(Path).ExcludeFromDescription();

    private static bool IsCounted(HttpContext context) => Methods.Contains(context.Request.Method);
}
