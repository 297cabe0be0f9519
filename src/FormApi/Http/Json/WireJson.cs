using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FormApi.Http.Json;

/// <summary>How JSON is read and written; what is read and written, each feature says in a context of its own.</summary>
internal static class WireJson
{
    /// <summary>Deepest nesting of a body.</summary>
    public const int MaxDepth = 32;

    /// <summary>Answers are read by people too: no escapes but those JSON needs. They are never put into a page.</summary>
    public static JsonWriterOptions Writing { get; } =
        new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true };

    /// <summary>Options that read requests strictly: nothing unknown, nothing twice, no text for numbers, no numbers for words.</summary>
    /// <returns>New ones, for one context.</returns>
    public static JsonSerializerOptions Strict() => new(JsonSerializerDefaults.Web)
    {
        PropertyNameCaseInsensitive = false,
        NumberHandling = JsonNumberHandling.Strict,
        AllowDuplicateProperties = false,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        AllowOutOfOrderMetadataProperties = true,
        MaxDepth = MaxDepth,
        Converters = { new WholeNumberConverter(), new WordConverter() },
    };
}
