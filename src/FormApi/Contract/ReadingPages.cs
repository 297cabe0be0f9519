using System.Collections.Frozen;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;
using Swashbuckle.AspNetCore.SwaggerUI;

namespace FormApi.Contract;

/// <summary>Pages to read the contract and try it, at <c>/docs</c>: our page and script around a viewer's script and style sheet.</summary>
/// <remarks>
/// A browser is told to load what this service serves and nothing else, neither from other places nor out of the page itself. The viewer's
/// style sheet has its icons written into it; here they are files like any other. The viewer's own page is left out: its bar brings styles
/// along inside the page.
/// </remarks>
internal static partial class ReadingPages
{
    private const string Root = "/docs";
    private const string Start = Root + "/index.html";
    private const string StyleSheet = "swagger-ui.css";
    private const string Policy = "default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'";

    private static readonly string[] OwnFiles = ["index.html", "docs.css", "docs.js"];

    private static readonly string[] ViewerFiles = ["swagger-ui-bundle.js", "favicon-32x32.png"];

    private static readonly Lazy<FrozenDictionary<string, ReadingPage>> Files = new(
        () => All().ToFrozenDictionary(page => page.Name, StringComparer.Ordinal));

    /// <summary>Every file of the pages.</summary>
    internal static IEnumerable<ReadingPage> Pages => Files.Value.Values;

    /// <summary>Adds the routes.</summary>
    /// <param name="app">The service.</param>
    public static void MapReadingPages(this IEndpointRouteBuilder app)
    {
        app.MapGet(Root, () => TypedResults.Redirect("~" + Start)).ExcludeFromDescription();
        app.MapGet(Root + "/{name}", Send).ExcludeFromDescription();
    }

    private static Results<FileContentHttpResult, UnchangedResult, NotFound> Send(HttpContext context, string name)
    {
        if (!Files.Value.TryGetValue(name, out var page))
            return TypedResults.NotFound();
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers.CacheControl = "public, max-age=3600";
        if (EntityTag.KnownAs(context, page.Tag, "page") is { } known)
            return new UnchangedResult(known);

        EntityTag.Add(context, page.Tag, "page");
        return TypedResults.Bytes(page.Content, page.MediaType);
    }

    private static IEnumerable<ReadingPage> All()
    {
        var own = OwnFiles.Select(name => ReadingPage.Of(name, MediaTypeOf(name), BytesOf(typeof(ReadingPages), "docs/" + name)));
        var viewer = ViewerFiles.Select(name => ReadingPage.Of(name, MediaTypeOf(name), OfViewer(name)));
        return [.. own, .. viewer, .. WithoutIcons(Encoding.UTF8.GetString(OfViewer(StyleSheet)))];
    }

    // The style sheet, and the icons taken out of it, each once.
    private static IEnumerable<ReadingPage> WithoutIcons(string styles)
    {
        var icons = new Dictionary<string, ReadingPage>();
        var bare = IconInside().Replace(styles, found =>
        {
            var icon = IconOf(found.Groups["media"].Value, found.Groups["coding"].Value, found.Groups["content"].Value, icons.Count + 1);
            return $"url(./{(icons.TryAdd(found.Value, icon) ? icon : icons[found.Value]).Name})";
        });
        return [ReadingPage.Of(StyleSheet, MediaTypeOf(StyleSheet), Encoding.UTF8.GetBytes(bare)), .. icons.Values];
    }

    private static ReadingPage IconOf(string media, string coding, string content, int number)
    {
        var bytes = coding.EndsWith("base64", StringComparison.Ordinal)
            ? Convert.FromBase64String(content)
            : Encoding.UTF8.GetBytes(Uri.UnescapeDataString(content.Replace("\\\"", "\"", StringComparison.Ordinal)));
        return ReadingPage.Of($"icon-{number}.{media.Split('/', '+')[1]}", media, bytes);
    }

    private static byte[] OfViewer(string name)
    {
        var assembly = typeof(SwaggerUIOptions).Assembly;
        using var packed = assembly.GetManifestResourceStream("Swashbuckle.AspNetCore.SwaggerUI.node_modules.swagger_ui_dist." + name)!;
        using var unpacked = new GZipStream(packed, CompressionMode.Decompress);
        return BytesOf(unpacked);
    }

    private static byte[] BytesOf(Type type, string resource)
    {
        using var stream = type.Assembly.GetManifestResourceStream(resource)!;
        return BytesOf(stream);
    }

    private static byte[] BytesOf(Stream stream)
    {
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    private static string MediaTypeOf(string name) => Path.GetExtension(name) switch
    {
        ".html" => "text/html;charset=utf-8",
        ".css" => "text/css;charset=utf-8",
        ".js" => "text/javascript;charset=utf-8",
        _ => "image/png",
    };

    // In quotes, where quotes inside are escaped, or without, where brackets end it.
    [GeneratedRegex("""url\((?:"data:(?<media>[^;,]+)(?<coding>[^,]*),(?<content>(?:[^"\\]|\\.)*)"|data:(?<media>[^;,]+)(?<coding>[^,]*),(?<content>[^)]*))\)""")]
    private static partial Regex IconInside();
}

/// <summary>A file of the pages.</summary>
/// <param name="Name">Its name.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="Content">What it holds.</param>
/// <param name="Tag">What names its content.</param>
internal sealed record ReadingPage(string Name, string MediaType, byte[] Content, string Tag)
{
    /// <summary>A file, named by its content.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="mediaType">Its media type.</param>
    /// <param name="content">What it holds.</param>
    public static ReadingPage Of(string name, string mediaType, byte[] content) =>
        new(name, mediaType, content, Convert.ToHexStringLower(SHA256.HashData(content).AsSpan(0, 8)));
}
