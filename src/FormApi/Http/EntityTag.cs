using Microsoft.Net.Http.Headers;

namespace FormApi.Http;

/// <summary>The entity tag of an answer: what it was calculated from, its media type, and its encoding.</summary>
internal static class EntityTag
{
    /// <summary>Adds the tag, and what else the answer depends on.</summary>
    /// <param name="context">The request.</param>
    /// <param name="name">What names the content.</param>
    /// <param name="media">Short name of the media type.</param>
    public static void Add(HttpContext context, string name, string media = "json")
    {
        var headers = context.Response.Headers;
        headers.Vary = "Accept, Accept-Encoding";
        headers.ETag = Of(name, media, "");
        if (context.Request.Headers.AcceptEncoding.Count > 0)
            context.Response.OnStarting(() => NameEncoding(headers, name, media));
    }

    /// <summary>Whether the caller has one of the tags of this content already.</summary>
    /// <param name="context">The request.</param>
    /// <param name="name">What names the content.</param>
    /// <param name="media">Short name of the media type.</param>
    public static bool IsKnown(HttpContext context, string name, string media = "json")
    {
        var stem = $"\"{name}-{media}";
        return EntityTagHeaderValue.TryParseList(context.Request.Headers.IfNoneMatch, out var tags)
            && tags.Any(tag => tag.Tag == "*" || (tag.Tag.StartsWith(stem, StringComparison.Ordinal) && tag.Tag[stem.Length] is '"' or '-'));
    }

    private static Task NameEncoding(IHeaderDictionary headers, string name, string media)
    {
        // Whether the answer is compressed is known only once it starts.
        if (headers.ContentEncoding.Count > 0)
            headers.ETag = Of(name, media, "-" + headers.ContentEncoding[0]);
        headers.Vary = "Accept, Accept-Encoding";
        return Task.CompletedTask;
    }

    private static string Of(string name, string media, string encoding) => $"\"{name}-{media}{encoding}\"";
}
