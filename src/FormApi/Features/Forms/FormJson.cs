using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Forms;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(FormRequest))]
internal sealed partial class FormRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static FormRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(FormAnswer))]
[JsonSerializable(typeof(StationResult[]))]
internal sealed partial class FormAnswerJson : JsonSerializerContext;
