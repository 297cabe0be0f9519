using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Predictions;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(PredictionRequest))]
internal sealed partial class PredictionRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static PredictionRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PredictionAnswer))]
internal sealed partial class PredictionAnswerJson : JsonSerializerContext;
