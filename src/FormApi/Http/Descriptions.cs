namespace FormApi.Http;

/// <summary>How endpoints describe themselves to the contract.</summary>
internal static class Descriptions
{
    /// <summary>A table: read only, answered as JSON.</summary>
    /// <typeparam name="TAnswer">Type of the answer.</typeparam>
    /// <param name="endpoint">The endpoint.</param>
    /// <param name="name">Stable name of the operation.</param>
    /// <param name="tag">What it belongs to.</param>
    /// <param name="summary">What it answers, in a line.</param>
    /// <param name="problems">Statuses of its own problems.</param>
    public static RouteHandlerBuilder Describe<TAnswer>(
        this RouteHandlerBuilder endpoint, string name, string tag, string summary, params int[] problems)
    {
        endpoint.WithName(name).WithTags(tag).WithSummary(summary)
            .WithMetadata(new MediaTypes("application/json"))
            .Produces<TAnswer>(200, "application/json");
        foreach (var status in problems)
            endpoint.Produces<Problem>(status, ProblemResult.MediaType);
        return endpoint;
    }

    /// <summary>A calculation: a JSON body in, JSON out, under the limits.</summary>
    /// <typeparam name="TRequest">Type of the body.</typeparam>
    /// <typeparam name="TAnswer">Type of the answer.</typeparam>
    /// <param name="endpoint">The endpoint.</param>
    /// <param name="name">Stable name of the operation.</param>
    /// <param name="tag">What it belongs to.</param>
    /// <param name="summary">What it answers, in a line.</param>
    /// <param name="description">What else a caller should know.</param>
    public static RouteHandlerBuilder DescribeComputation<TRequest, TAnswer>(
        this RouteHandlerBuilder endpoint, string name, string tag, string summary, string description)
        where TRequest : notnull => endpoint
        .Describe<TAnswer>(name, tag, summary, 400, 406, 413, 415, 422, 429, 503)
        .WithDescription(description)
        .Accepts<TRequest>("application/json");

    /// <summary>A calculation: a JSON body in, a file of the caller's choice out, under the limits.</summary>
    /// <typeparam name="TRequest">Type of the body.</typeparam>
    /// <param name="endpoint">The endpoint.</param>
    /// <param name="name">Stable name of the operation.</param>
    /// <param name="tag">What it belongs to.</param>
    /// <param name="summary">What it answers, in a line.</param>
    /// <param name="description">What else a caller should know.</param>
    /// <param name="media">Media types it answers in.</param>
    public static RouteHandlerBuilder DescribeFile<TRequest>(
        this RouteHandlerBuilder endpoint, string name, string tag, string summary, string description, params string[] media)
        where TRequest : notnull
    {
        endpoint.WithName(name).WithTags(tag).WithSummary(summary).WithDescription(description)
            .Accepts<TRequest>("application/json")
            .Produces<byte[]>(200, media[0], media[1..]);
        foreach (var status in (int[])[400, 406, 413, 415, 422, 429, 503])
            endpoint.Produces<Problem>(status, ProblemResult.MediaType);
        return endpoint;
    }
}
