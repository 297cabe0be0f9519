using FormApi.Http.Problems;
using Microsoft.Net.Http.Headers;

namespace FormApi.Http.Requests;

/// <summary>What a body says it is.</summary>
internal static class RequestMedia
{
    /// <summary>Encodings in which a body may be compressed, as a caller is told of them (RFC 7694).</summary>
    private const string Encodings = "gzip, br, deflate";

    /// <summary>Whether a body is of a media type, in UTF-8, and no longer compressed.</summary>
    /// <param name="request">The request.</param>
    /// <param name="media">The media type.</param>
    public static bool Is(HttpRequest request, string media)
    {
        if (request.ContentType == media && request.Headers.ContentEncoding.Count == 0)
            return true;
        return MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
            && type.MediaType.Equals(media, StringComparison.OrdinalIgnoreCase)
            && (!type.Charset.HasValue
                || type.Charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase)
                || type.Charset.Equals("\"utf-8\"", StringComparison.OrdinalIgnoreCase))
            && request.Headers.ContentEncoding.All(encoding => encoding is null or "identity" or "");
    }

    /// <summary>The problem with a body that is none of that; says which compression is known where that is at fault.</summary>
    /// <param name="context">The request.</param>
    /// <param name="media">The media type that is asked for.</param>
    public static ProblemResult Refusal(HttpContext context, string media)
    {
        if (context.Request.Headers.ContentEncoding.Count == 0)
            return new(ProblemKinds.UnsupportedMediaType, $"The body must be {media} in UTF-8.");
        context.Response.Headers.AcceptEncoding = Encodings;
        return new(ProblemKinds.UnsupportedMediaType, $"The body's compression is not known; known are {Encodings}, one of them.");
    }
}
