using System.Text.Json.Serialization;

namespace FormApi.Features.Gauges;

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(GaugesAnswer))]
internal sealed partial class GaugesAnswerJson : JsonSerializerContext;
