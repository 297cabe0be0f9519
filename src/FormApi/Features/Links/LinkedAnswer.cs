using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Results;

namespace FormApi.Features.Links;

/// <summary>The answer to a link: calculated, unless the caller has it.</summary>
internal static class LinkedAnswer
{
    /// <summary>Answers a link.</summary>
    /// <param name="context">The request.</param>
    /// <param name="text">The text of the link.</param>
    /// <param name="mostBytes">Most bytes it may hold once inflated.</param>
    /// <param name="media">Media type of the answer.</param>
    /// <param name="compute">Answers the request in it.</param>
    public static IResult Of(HttpContext context, string text, int mostBytes, string media, Func<ReadOnlyMemory<byte>, IResult> compute)
    {
        if (LinkText.Read(text, mostBytes, out var json) is { } problem)
            return problem;
        // A new engine may change the values.
        context.Response.Headers.CacheControl = "private, no-cache";
        if (IsKnownUnread(context, json.Span, media))
            return Results.Empty;
        var answer = compute(json);
        return answer is NamedResult named && named.SaidUnchanged(context) ? Results.Empty : answer;
    }

    // Links in answers hold the very text that the fingerprint is made of, so a caller who names it needs no calculation.
    private static bool IsKnownUnread(HttpContext context, ReadOnlySpan<byte> json, string media) =>
        context.Request.Headers.IfNoneMatch is [not (null or "*"), ..] && NamedResult.SaidUnchanged(context, Fingerprint.OfCanonical(json), media);
}
