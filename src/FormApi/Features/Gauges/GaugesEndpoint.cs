using FormApi.Http.Problems;
using FormApi.Http.Queries;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Gauges;

/// <summary><c>GET /v1/gauges</c>: the gauge systems in use.</summary>
internal static class GaugesEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapGauges(this IEndpointRouteBuilder routes) => routes.MapGet("/v1/gauges", List)
        .Describe("listGauges", "Gauges", "Gauge systems with their thicknesses as published.");

    /// <summary>Lists the gauge systems.</summary>
    /// <param name="units">Units of the thicknesses: <c>mm</c> or <c>in</c>. Default: <c>mm</c>.</param>
    private static Results<TableResult<GaugesAnswer>, ProblemResult> List(string? units = null) =>
        UnitsQuery.TryRead(units, out var system, out var problem)
            ? new TableResult<GaugesAnswer>($"gauges-{system.LengthName}", () => GaugesAnswer.In(system), GaugesAnswerJson.Default.GaugesAnswer)
            : problem;
}
