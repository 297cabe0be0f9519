using Microsoft.OpenApi;

namespace FormApi.Contract;

/// <summary>The headers of answers, said once.</summary>
/// <remarks><c>Content-Type</c> is for people: OpenAPI has programs ignore it here, the media types tell them.</remarks>
internal static class ResponseHeaders
{
    /// <summary>What names an answer.</summary>
    public const string ETag = "ETag";

    /// <summary>When to try again.</summary>
    public const string RetryAfter = "Retry-After";

    /// <summary>Media type of the body.</summary>
    public const string ContentType = "Content-Type";

    /// <summary>Name for a file.</summary>
    public const string ContentDisposition = "Content-Disposition";

    private static readonly Dictionary<string, OpenApiHeader> All = new()
    {
        [ETag] = new()
        {
            Description = "Names this answer: made from request, engine, media type and encoding. Sent back as If-None-Match to what can be read again, it is answered 304 while nothing has changed.",
            Schema = new OpenApiSchema { Type = JsonSchemaType.String },
        },
        [RetryAfter] = new()
        {
            Description = "When to try again [s].",
            Schema = new OpenApiSchema { Type = JsonSchemaType.Integer, Minimum = "1" },
        },
        [ContentType] = new()
        {
            Description = "Media type of the body: one of those that the response lists.",
            Schema = new OpenApiSchema { Type = JsonSchemaType.String },
        },
        [ContentDisposition] = new()
        {
            Description = "File name to save the answer under; not sent with JSON.",
            Schema = new OpenApiSchema { Type = JsonSchemaType.String },
        },
    };

    /// <summary>Puts headers among the shared ones and refers to them.</summary>
    /// <param name="document">The contract.</param>
    /// <param name="names">Their names.</param>
    public static Dictionary<string, IOpenApiHeader> Refer(OpenApiDocument document, params IEnumerable<string> names) =>
        names.ToDictionary(name => name, name => (IOpenApiHeader)ReferTo(document, name));

    private static OpenApiHeaderReference ReferTo(OpenApiDocument document, string name)
    {
        document.Components ??= new();
        document.Components.Headers ??= new Dictionary<string, IOpenApiHeader>();
        document.Components.Headers.TryAdd(name, All[name]);
        return new(name, document);
    }
}
