using Microsoft.OpenApi;

namespace FormApi.Contract;

/// <summary>
/// The headers of answers, said once. <c>Content-Type</c> is not among them: OpenAPI has readers ignore it there, the media types say it.
/// </summary>
internal static class ResponseHeaders
{
    /// <summary>What names an answer.</summary>
    public const string ETag = "ETag";

    /// <summary>When to try again.</summary>
    public const string RetryAfter = "Retry-After";

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
    };

    /// <summary>Puts a header among the shared ones and refers to it.</summary>
    /// <param name="document">The contract.</param>
    /// <param name="name">Its name.</param>
    public static OpenApiHeaderReference Refer(OpenApiDocument document, string name)
    {
        document.Components ??= new();
        document.Components.Headers ??= new Dictionary<string, IOpenApiHeader>();
        document.Components.Headers.TryAdd(name, All[name]);
        return new(name, document);
    }
}
