using FormApi.Http;

namespace FormApi.Features.Links;

/// <summary>The answer to a link: calculated, unless the caller has it.</summary>
/// <param name="text">The text of the link.</param>
/// <param name="mostBytes">Most bytes it may hold once inflated.</param>
/// <param name="media">Media type of the answer.</param>
/// <param name="compute">Answers the request in it.</param>
internal sealed class LinkedResult(string text, int mostBytes, string media, Func<ReadOnlyMemory<byte>, IResult> compute) : IResult
{
    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext)
    {
        if (LinkText.Read(text, mostBytes, out var json) is { } problem)
            return problem.ExecuteAsync(httpContext);
        // A new engine may change the figures.
        httpContext.Response.Headers.CacheControl = "private, no-cache";
        if (IsKnownUnread(httpContext, json.Span))
            return Task.CompletedTask;
        var answer = compute(json);
        return answer is NamedResult named ? named.AnswerUnlessKnownAsync(httpContext) : answer.ExecuteAsync(httpContext);
    }

    // Links in answers hold the very text that the fingerprint is made of, so a caller who names it needs no calculation.
    private bool IsKnownUnread(HttpContext context, ReadOnlySpan<byte> json) =>
        context.Request.Headers.IfNoneMatch is [not (null or "*"), ..] && NamedResult.SaidUnchanged(context, Fingerprint.OfCanonical(json), media);
}
