using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Comparisons;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(ComparisonRequest))]
internal sealed partial class ComparisonRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static ComparisonRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ComparisonAnswer))]
internal sealed partial class ComparisonAnswerJson : JsonSerializerContext;
