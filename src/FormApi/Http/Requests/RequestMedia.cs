using Microsoft.Net.Http.Headers;

namespace FormApi.Http.Requests;

/// <summary>What a body says it is.</summary>
internal static class RequestMedia
{
    /// <summary>Whether a body is of a media type, in UTF-8, and not compressed.</summary>
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
}
