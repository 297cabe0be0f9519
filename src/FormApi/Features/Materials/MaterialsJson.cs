using System.Text.Json.Serialization;

namespace FormApi.Features.Materials;

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(MaterialsAnswer))]
[JsonSerializable(typeof(MaterialAnswer))]
internal sealed partial class MaterialsAnswerJson : JsonSerializerContext;
