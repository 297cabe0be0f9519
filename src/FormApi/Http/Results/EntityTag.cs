using Microsoft.Net.Http.Headers;

namespace FormApi.Http.Results;

/// <summary>The entity tag of an answer: what it was calculated from, its media type, and its encoding.</summary>
internal static class EntityTag
{
    private const string Varies = "Accept, Accept-Encoding, Prefer";

    private static readonly string[] Encodings = ["", "-br", "-gzip"];

    /// <summary>Adds the tag, and what else the answer depends on.</summary>
    /// <param name="context">The request.</param>
    /// <param name="name">What names the content.</param>
    /// <param name="media">Short name of the media type.</param>
    public static void Add(HttpContext context, string name, string media = "json")
    {
        var headers = context.Response.Headers;
        headers.Vary = Varies;
        headers.ETag = Of(name, media, "");
        if (context.Request.Headers.AcceptEncoding.Count > 0)
            context.Response.OnStarting(() => NameEncoding(headers, name, media));
    }

    /// <summary>
    /// The tag by which the caller knows this content already, or null: of the encoding it has, which need not be the one it would be sent
    /// now.
    /// </summary>
    /// <param name="context">The request.</param>
    /// <param name="name">What names the content.</param>
    /// <param name="media">Short name of the media type.</param>
    public static string? KnownAs(HttpContext context, string name, string media = "json")
    {
        if (!EntityTagHeaderValue.TryParseList(context.Request.Headers.IfNoneMatch, out var tags))
            return null;
        foreach (var tag in tags)
        {
            if (tag.Tag == "*")
                return Of(name, media, "");
            if (Array.Find(Encodings, encoding => tag.Tag == Of(name, media, encoding)) is { } known)
                return Of(name, media, known);
        }

        return null;
    }

    /// <summary>Tells a caller that what it has is what it would be sent.</summary>
    /// <param name="context">The request.</param>
    /// <param name="tag">The tag by which it knows it.</param>
    public static void SayUnchanged(HttpContext context, string tag)
    {
        context.Response.Headers.Vary = Varies;
        context.Response.Headers.ETag = tag;
        context.Response.StatusCode = StatusCodes.Status304NotModified;
    }

    private static Task NameEncoding(IHeaderDictionary headers, string name, string media)
    {
        // Whether the answer is compressed is known only once it starts.
        if (headers.ContentEncoding.Count > 0)
            headers.ETag = Of(name, media, "-" + headers.ContentEncoding[0]);
        headers.Vary = Varies;
        return Task.CompletedTask;
    }

    private static string Of(string name, string media, string encoding) => $"\"{name}-{media}{encoding}\"";
}
