using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using FormApi.Features.Batches;
using FormApi.Features.Estimates;
using FormApi.Features.Forms;
using FormApi.Features.Gauges;
using FormApi.Features.Inspections;
using FormApi.Features.Materials;
using FormApi.Features.Predictions;
using FormApi.Features.Programs;
using FormApi.Features.References;
using FormApi.Features.TestStrips;
using FormApi.Features.Tolerances;
using FormApi.Features.Verification;
using FormApi.Http.Problems;
using FormApi.Http.Units;
using Forming.Curves;
using Forming.Estimates;
using Forming.Facets;
using Forming.Folds;
using Forming.Inspection;
using Forming.Jobs;
using Forming.Layout;
using Forming.TestStrips;

namespace FormApi.Http.Json;

/// <summary>How JSON is read and written.</summary>
internal static class WireJson
{
    /// <summary>Deepest nesting of a body.</summary>
    public const int MaxDepth = 32;

    /// <summary>Answers are read by people too: no escapes but those JSON needs. They are never put into a page.</summary>
    public static JsonWriterOptions Writing { get; } = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true };

    /// <summary>Types of requests, read strictly: nothing unknown, nothing twice, no text for numbers, no numbers for words.</summary>
    public static RequestJson Requests { get; } = new(new JsonSerializerOptions(JsonSerializerDefaults.Web)
    {
        PropertyNameCaseInsensitive = false,
        NumberHandling = JsonNumberHandling.Strict,
        AllowDuplicateProperties = false,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        AllowOutOfOrderMetadataProperties = true,
        MaxDepth = MaxDepth,
        Converters =
        {
            new WholeNumberConverter(),
            new WordConverter<LengthUnit>(),
            new WordConverter<FinishName>(),
            new WordConverter<SpringbackModel>(),
            new WordConverter<Surface>(),
            new WordConverter<ProgressiveLaw>(),
            new WordConverter<TaperPlacement>(),
            new WordConverter<SteppingRule>(),
            new WordConverter<StopRounding>(),
            new WordConverter<SteppingEnds>(),
            new WordConverter<Grain>(),
            new WordConverter<FormBacking>(),
            new WordConverter<BrakeKind>(),
            new WordConverter<Datum>(),
            new WordConverter<FlangeEnd>(),
            new WordConverter<StripVerdict>(),
            new WordConverter<AccuracyFigure>(),
            new WordConverter<CorrectionDirection>(),
            new WordConverter<BatchOperation>(),
            new WordConverter<LearningModel>(),
        },
    });
}

/// <summary>Types of requests.</summary>
[JsonSerializable(typeof(FormRequest))]
[JsonSerializable(typeof(PredictionRequest))]
[JsonSerializable(typeof(ProgramRequest))]
[JsonSerializable(typeof(StopStripsRequest))]
[JsonSerializable(typeof(SpringbackStripsRequest))]
[JsonSerializable(typeof(NeutralFactorStripsRequest))]
[JsonSerializable(typeof(PrintThroughStripsRequest))]
[JsonSerializable(typeof(ToleranceRequest))]
[JsonSerializable(typeof(InspectionRequest))]
[JsonSerializable(typeof(BatchLine))]
[JsonSerializable(typeof(EstimateRequest))]
internal sealed partial class RequestJson : JsonSerializerContext;

/// <summary>Types of answers; no converters in its options, so that they are written without metadata.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(FormAnswer))]
[JsonSerializable(typeof(PredictionAnswer))]
[JsonSerializable(typeof(ProgramAnswer))]
[JsonSerializable(typeof(StopStripsAnswer))]
[JsonSerializable(typeof(SpringbackStripsAnswer))]
[JsonSerializable(typeof(NeutralFactorStripsAnswer))]
[JsonSerializable(typeof(PrintThroughStripsAnswer))]
[JsonSerializable(typeof(ToleranceAnswer))]
[JsonSerializable(typeof(InspectionAnswer))]
[JsonSerializable(typeof(BatchLineAnswer))]
[JsonSerializable(typeof(EstimateAnswer))]
[JsonSerializable(typeof(MaterialsAnswer))]
[JsonSerializable(typeof(MaterialAnswer))]
[JsonSerializable(typeof(GaugesAnswer))]
[JsonSerializable(typeof(ReferencesAnswer))]
[JsonSerializable(typeof(ProblemKind))]
[JsonSerializable(typeof(Problem))]
[JsonSerializable(typeof(HealthAnswer))]
[JsonSerializable(typeof(ReadinessAnswer))]
[JsonSerializable(typeof(VerificationAnswer))]
[JsonSerializable(typeof(string))]
internal sealed partial class AnswerJson : JsonSerializerContext;
