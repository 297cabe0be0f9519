using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.TestStrips;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(StopStripsRequest))]
[JsonSerializable(typeof(SpringbackStripsRequest))]
[JsonSerializable(typeof(NeutralFactorStripsRequest))]
[JsonSerializable(typeof(PrintThroughStripsRequest))]
internal sealed partial class StripRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static StripRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(StopStripsAnswer))]
[JsonSerializable(typeof(SpringbackStripsAnswer))]
[JsonSerializable(typeof(NeutralFactorStripsAnswer))]
[JsonSerializable(typeof(PrintThroughStripsAnswer))]
internal sealed partial class StripAnswerJson : JsonSerializerContext;
