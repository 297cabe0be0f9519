using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Batches;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(BatchLine))]
internal sealed partial class BatchRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static BatchRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(BatchLineAnswer))]
internal sealed partial class BatchAnswerJson : JsonSerializerContext;
