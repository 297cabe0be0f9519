using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;

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
    /// <typeparam name="TAnswer">Type of the answer.</typeparam>
    public static Results<TAnswer, UnchangedResult, ProblemResult> Of<TAnswer>(
        HttpContext context, string text, int mostBytes, string media, Func<ReadOnlyMemory<byte>, Results<TAnswer, ProblemResult>> compute)
        where TAnswer : IResult
    {
        if (LinkText.Read(text, mostBytes, out var json) is { } problem)
            return problem;
        // A new engine may change the values.
        context.Response.Headers.CacheControl = "private, no-cache";
        if (UnchangedUnread(context, json.Span, media) is { } unread)
            return unread;
        var answer = compute(json).Result;
        if (answer.Innermost() is NamedResult named && named.UnchangedFor(context) is { } unchanged)
            return unchanged;
        return answer is TAnswer computed ? computed : (ProblemResult)answer;
    }

    // Links in answers hold the very text that the fingerprint is made of, so a caller who names it needs no calculation.
    private static UnchangedResult? UnchangedUnread(HttpContext context, ReadOnlySpan<byte> json, string media) =>
        context.Request.Headers.IfNoneMatch is [not (null or "*"), ..]
            ? NamedResult.UnchangedFor(context, Fingerprint.OfCanonical(json), media)
            : null;
}
