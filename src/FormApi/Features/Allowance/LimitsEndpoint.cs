using FormApi.Features.Verification;
using FormApi.Http;
using FormApi.Http.Callers;
using FormApi.Http.Results;
using Microsoft.Extensions.Options;

namespace FormApi.Features.Allowance;

/// <summary><c>GET /v1/limits</c>: how much the caller may ask for.</summary>
internal static class LimitsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapLimits(this IEndpointRouteBuilder routes) => routes.MapGet("/v1/limits", Show)
        .Describe("showLimits", "Operations", "How much the caller may ask for, and what is left of it now.");

    private static HealthResult<LimitsAnswer> Show(HttpContext context, IOptions<Limits> options, CallerLimits callers)
    {
        var limits = options.Value;
        return new(
            new(
                Caller.NameOf(context),
                limits.CallerPerSecond,
                limits.CallerBurst,
                callers.LeftFor(context),
                limits.CallerConcurrent,
                limits.CallerQueued,
                limits.Seconds,
                limits.BodyBytes,
                limits.BatchLines,
                limits.BatchLineBytes,
                limits.Batches,
                Environment.ProcessorCount),
            LimitsAnswerJson.Default.LimitsAnswer);
    }
}
