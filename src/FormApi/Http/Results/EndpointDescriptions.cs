using FormApi.Http.Problems;

namespace FormApi.Http.Results;

/// <summary>What endpoints say of themselves in the contract beside the types of their handlers.</summary>
internal static class EndpointDescriptions
{
    /// <summary>Names an operation.</summary>
    /// <param name="endpoint">The endpoint.</param>
    /// <param name="name">Stable name of the operation.</param>
    /// <param name="tag">What it belongs to.</param>
    /// <param name="summary">What it answers, in a line.</param>
    /// <param name="description">What else a caller should know, or null.</param>
    public static RouteHandlerBuilder Describe(
        this RouteHandlerBuilder endpoint, string name, string tag, string summary, string? description = null)
    {
        endpoint.WithName(name).WithTags(tag).WithSummary(summary);
        return description is null ? endpoint : endpoint.WithDescription(description);
    }

    /// <summary>Adds problems that no type of the handler tells.</summary>
    /// <typeparam name="TBuilder">Builder of an endpoint or of a group.</typeparam>
    /// <param name="endpoint">The endpoint, or the group.</param>
    /// <param name="statuses">HTTP statuses.</param>
    public static TBuilder Refuses<TBuilder>(this TBuilder endpoint, params int[] statuses)
        where TBuilder : IEndpointConventionBuilder
    {
        endpoint.Add(builder => ProblemMetadata.Add(builder, statuses));
        return endpoint;
    }
}
