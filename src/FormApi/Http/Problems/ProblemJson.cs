using System.Text.Json.Serialization;

namespace FormApi.Http.Problems;

/// <summary>Problems; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ProblemKind))]
[JsonSerializable(typeof(string))]
[JsonSerializable(typeof(Problem))]
internal sealed partial class ProblemJson : JsonSerializerContext;
