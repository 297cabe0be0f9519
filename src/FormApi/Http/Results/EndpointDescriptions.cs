using FormApi.Http.Problems;

namespace FormApi.Http.Results;

/// <summary>How endpoints describe themselves to the contract.</summary>
internal static class EndpointDescriptions
{
    /// <summary>A table: read only, answered as JSON.</summary>
    /// <typeparam name="TAnswer">Type of the answer.</typeparam>
    /// <param name="endpoint">The endpoint.</param>
    /// <param name="name">Stable name of the operation.</param>
    /// <param name="tag">What it belongs to.</param>
    /// <param name="summary">What it answers, in a line.</param>
    /// <param name="problems">Statuses of its own problems.</param>
    public static RouteHandlerBuilder Describe<TAnswer>(
        this RouteHandlerBuilder endpoint, string name, string tag, string summary, params int[] problems) =>
        endpoint.Describe<TAnswer>(name, tag, summary, MediaTypes.Json, problems);

    /// <summary>Something that is answered in one media type.</summary>
    /// <typeparam name="TAnswer">Type of the answer, or of each of its lines.</typeparam>
    /// <param name="endpoint">The endpoint.</param>
    /// <param name="name">Stable name of the operation.</param>
    /// <param name="tag">What it belongs to.</param>
    /// <param name="summary">What it answers, in a line.</param>
    /// <param name="media">Its media type.</param>
    /// <param name="problems">Statuses of its own problems.</param>
    public static RouteHandlerBuilder Describe<TAnswer>(
        this RouteHandlerBuilder endpoint, string name, string tag, string summary, string media, params int[] problems) => endpoint
        .WithName(name).WithTags(tag).WithSummary(summary)
        .WithMetadata(new MediaTypes(media))
        .Produces<TAnswer>(200, media)
        .AnswersToo(problems);

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
        .Describe<TAnswer>(name, tag, summary, 400, 406, 408, 413, 415, 422, 429, 503)
        .WithDescription(description)
        .Accepts<TRequest>(MediaTypes.Json);

    /// <summary>A file of the caller's choice.</summary>
    /// <param name="endpoint">The endpoint.</param>
    /// <param name="name">Stable name of the operation.</param>
    /// <param name="tag">What it belongs to.</param>
    /// <param name="summary">What it answers, in a line.</param>
    /// <param name="media">Media types it answers in.</param>
    /// <param name="problems">Statuses of its own problems.</param>
    public static RouteHandlerBuilder DescribeFile(
        this RouteHandlerBuilder endpoint, string name, string tag, string summary, MediaTypes media, params int[] problems) => endpoint
        .WithName(name).WithTags(tag).WithSummary(summary)
        .WithMetadata(media)
        .Produces<byte[]>(200, media.Offered[0], media.Offered[1..])
        .AnswersToo(problems);

    private static RouteHandlerBuilder AnswersToo(this RouteHandlerBuilder endpoint, int[] statuses)
    {
        // An Accept header that leaves nothing is answered with 406 on every path.
        foreach (var status in statuses.Append(406).Distinct().Order())
        {
            if (status < 400)
                endpoint.Produces(status);
            else
                endpoint.Produces<Problem>(status, ProblemResult.MediaType);
        }

        return endpoint;
    }
}
