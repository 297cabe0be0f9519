using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Inspections;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(InspectionRequest))]
internal sealed partial class InspectionRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static InspectionRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(InspectionAnswer))]
internal sealed partial class InspectionAnswerJson : JsonSerializerContext;
