using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Tolerances;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(ToleranceRequest))]
internal sealed partial class ToleranceRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static ToleranceRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ToleranceAnswer))]
internal sealed partial class ToleranceAnswerJson : JsonSerializerContext;
