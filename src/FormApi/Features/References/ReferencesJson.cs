using System.Text.Json.Serialization;

namespace FormApi.Features.References;

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ReferencesAnswer))]
internal sealed partial class ReferencesAnswerJson : JsonSerializerContext;
