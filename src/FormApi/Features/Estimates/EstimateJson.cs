using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Estimates;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(EstimateRequest))]
internal sealed partial class EstimateRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static EstimateRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(EstimateAnswer))]
internal sealed partial class EstimateAnswerJson : JsonSerializerContext;
