using FormApi.Http.Results;

namespace FormApi.Features.References;

/// <summary><c>GET /v1/references</c>: what the values rest on.</summary>
internal static class ReferencesEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapReferences(this IEndpointRouteBuilder routes) => routes.MapGet("/v1/references", List)
        .Describe("listReferences", "References", "The sources that materials, gauges and methods cite by key.");

    private static TableResult<ReferencesAnswer> List() =>
        new TableResult<ReferencesAnswer>("references", ReferencesAnswer.All, ReferencesAnswerJson.Default.ReferencesAnswer);
}
