using System.Text.Json.Serialization;

namespace FormApi.Features.Verification;

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(HealthAnswer))]
[JsonSerializable(typeof(ReadinessAnswer))]
[JsonSerializable(typeof(VerificationAnswer))]
internal sealed partial class VerificationAnswerJson : JsonSerializerContext;
