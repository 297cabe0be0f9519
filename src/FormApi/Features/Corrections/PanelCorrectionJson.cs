using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Corrections;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(PanelCorrectionRequest))]
internal sealed partial class PanelCorrectionRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static PanelCorrectionRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(PanelCorrectionAnswer))]
internal sealed partial class PanelCorrectionAnswerJson : JsonSerializerContext;
