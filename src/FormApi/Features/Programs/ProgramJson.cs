using System.Text.Json.Serialization;
using FormApi.Http.Json;

namespace FormApi.Features.Programs;

/// <summary>The feature's requests.</summary>
[JsonSerializable(typeof(ProgramRequest))]
internal sealed partial class ProgramRequestJson : JsonSerializerContext, IReadsRequests
{
    /// <summary>Reads them strictly.</summary>
    public static ProgramRequestJson Strict { get; } = new(WireJson.Strict());
}

/// <summary>The feature's answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(ProgramAnswer))]
[JsonSerializable(typeof(ImpossibleResult))]
internal sealed partial class ProgramAnswerJson : JsonSerializerContext;
