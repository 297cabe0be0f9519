using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Features.Forms;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Facets;
using Forming.Inspection;

namespace FormApi.Features.Inspections;

/// <summary>What was measured on a folded form, and the plan it was folded to: the request for its plan, or its stations.</summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> or <c>in</c>. Angles are in degrees.</param>
/// <param name="Measured">What was measured.</param>
/// <param name="Form">The form as planned. With <c>stations</c> leave out <c>width</c>, <c>stepping</c>, <c>grain</c> and <c>stop</c>, and
/// <c>neutralFactor</c> but with measured <c>spacings</c>: they would have no use.</param>
/// <param name="Panel">The panel; needed but with <c>stations</c>, where it only says what the errors do to a panel. There leave out
/// <c>trim</c>, <c>grain</c>, <c>stockSheets</c>, <c>clamp.height</c> and, of <c>springback</c>, <c>model</c> and <c>factor</c>.</param>
/// <param name="Brake">The brake; needed but with <c>stations</c>, which leave no use for it.</param>
/// <param name="Marks">How the flat form blank is marked; not with <c>stations</c>. Default: from the lead-in edge, on a tape in the
/// request's units.</param>
/// <param name="Ends">Half or full folds at the ends of a form given by its stations: it says where the panel is clamped; only with
/// <c>stations</c> and a panel. Default there: <c>half</c> where the first fold turns at most three quarters of the second, else
/// <c>full</c>.</param>
/// <param name="Stations">The folds as they should be, from the lead-in. Default: null, the form is planned.</param>
/// <param name="Tolerance">The tolerance of the form. Default: the sum of all folds within 1°, every mold line within 0.8 mm; an
/// assumption.</param>
/// <param name="Corrections">How folds may be corrected. Default: closed only, by up to 4 steps of the stop.</param>
internal sealed record InspectionRequest(
    LengthUnit Units,
    MeasuredInput Measured,
    FormInput? Form = null,
    PanelInput? Panel = null,
    BrakeInput? Brake = null,
    MarksInput? Marks = null,
    SteppingEnds? Ends = null,
    IReadOnlyList<StandingStationInput>? Stations = null,
    InspectionToleranceInput? Tolerance = null,
    CorrectionInput? Corrections = null) : IRequestBody<InspectionRequest>, IFoldedRequest
{
    private static readonly InspectionRequestRules InMm = new(UnitSystem.Mm);
    private static readonly InspectionRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<InspectionRequest> IRequestBody<InspectionRequest>.TypeInfo => InspectionRequestJson.Strict.InspectionRequest;

    /// <inheritdoc/>
    bool IRequestBody<InspectionRequest>.HasNullItems =>
        StationsRules.HasNull(this) || Measured.HasNullFlats || Measured.Far is { HasNullFlats: true };

    /// <inheritdoc/>
    string? IRequestBody<InspectionRequest>.MissingField => FoldedRules.MissingField(this);

    /// <inheritdoc/>
    ValidationResult IRequestBody<InspectionRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);
}

/// <summary>
/// What was measured: <c>angles</c>, with <c>spacings</c> or <c>facets</c> where they were measured too; or <c>points</c> alone.
/// </summary>
/// <param name="Angles">Fold angles from the lead-in, one for every fold [°]; 0 for one that was not made. This or <c>points</c>.</param>
/// <param name="Spacings">Distances between neighbouring fold centre lines, measured on the flat blank [mm or in]; bend allowance takes
/// them to facets. Default: null.</param>
/// <param name="Facets">Facets on the contact side, mold line to mold line [mm or in]. Default: null, as planned.</param>
/// <param name="Points">Points of a template along the contact side, a list for every flat from the lead-in to the lead-out, at least two
/// points each [x, y] [mm or in], in any frame in which the form turns left. This or <c>angles</c>.</param>
/// <param name="Far">The far end of a taper; the fields above are then about its near end. Default: null, as planned.</param>
internal sealed record MeasuredInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<double>? Angles = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<double>? Spacings = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<double>? Facets = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<IReadOnlyList<Pair>>? Points = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] MeasuredEndInput? Far = null) : IMeasuredEnd
{
    /// <summary>Whether a list stands for a flat that is null.</summary>
    internal bool HasNullFlats => Points is { } points && points.Contains(null);

    /// <summary>Whether a template was read, at whichever end.</summary>
    internal bool HasTemplate => Points is not null || Far?.Points is not null;
}

/// <summary>What was measured at the far end of a taper.</summary>
/// <param name="Spacings">As of the near end.</param>
/// <param name="Facets">As of the near end.</param>
/// <param name="Points">As of the near end.</param>
internal sealed record MeasuredEndInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<double>? Spacings = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<double>? Facets = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<IReadOnlyList<Pair>>? Points = null)
    : IMeasuredEnd
{
    /// <summary>Whether a list stands for a flat that is null.</summary>
    internal bool HasNullFlats => Points is { } points && points.Contains(null);
}

/// <summary>What was measured along one end of a form.</summary>
internal interface IMeasuredEnd
{
    /// <summary>Distances between fold centre lines on the flat blank, or null.</summary>
    IReadOnlyList<double>? Spacings { get; }

    /// <summary>Facets, or null.</summary>
    IReadOnlyList<double>? Facets { get; }

    /// <summary>Points of a template, or null.</summary>
    IReadOnlyList<IReadOnlyList<Pair>>? Points { get; }
}

/// <summary>The tolerance of a folded form.</summary>
/// <param name="Closing">Error of the sum of all folds, to either side [°]. Default: 1.</param>
/// <param name="Vertex">Miss of any mold line, the first flat fixed [mm or in]. Default: 0.8 mm.</param>
internal sealed record InspectionToleranceInput(double? Closing = null, double? Vertex = null);

/// <summary>How folds may be corrected.</summary>
/// <param name="Step">Step of the stop [°]. Default: the brake's <c>stopResolution</c>; with stations 0.5.</param>
/// <param name="Direction">Which way. Default: <c>close-only</c>; for a panel <c>both</c>.</param>
/// <param name="MaxSteps">Most steps at one fold, to either side. Default: 4; for a panel 2° if more.</param>
internal sealed record CorrectionInput(double? Step = null, CorrectionDirection? Direction = null, int? MaxSteps = null);

/// <summary>What an inspection must satisfy.</summary>
internal sealed class InspectionRequestRules : AbstractValidator<InspectionRequest>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public InspectionRequestRules(UnitSystem units)
    {
        this.AddFoldedRules(units, request => request.Measured.Spacings is not null, request => request.Panel is not null);
        RuleFor(request => request.Measured).SetValidator(new MeasuredInputRules(units));
        RuleFor(request => request.Measured.Far).Null()
            .Else("not-applicable", "Only a planned taper has two ends.", "with panel.curve of type taper and without stations")
            .When(request => request.Stations is not null || request.Panel?.Curve is not TaperInput);
        RuleFor(request => request.Tolerance!).SetValidator(new InspectionToleranceInputRules(units))
            .When(request => request.Tolerance is not null);
        RuleFor(request => request.Corrections!).SetValidator(new CorrectionInputRules(units))
            .When(request => request.Corrections is not null);
        this.AddStandingPanelRules();
        RuleFor(request => request.Ends).Null()
            .Else("not-applicable", "It only says where the panel is clamped on a form given by its stations.", "only with stations and a panel; else form.stepping.ends")
            .When(request => request.Stations is null || request.Panel is null);
    }
}

/// <summary>What the tolerance of a form must satisfy.</summary>
internal sealed class InspectionToleranceInputRules : AbstractValidator<InspectionToleranceInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public InspectionToleranceInputRules(UnitSystem units)
    {
        RuleFor(tolerance => tolerance.Closing).Within(Ranges.ClosingTolerance, units);
        RuleFor(tolerance => tolerance.Vertex).Within(Ranges.PlaceTolerance, units);
    }
}

/// <summary>What corrections must satisfy.</summary>
internal sealed class CorrectionInputRules : AbstractValidator<CorrectionInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public CorrectionInputRules(UnitSystem units)
    {
        RuleFor(corrections => corrections.Step).Within(Ranges.StopResolution, units);
        RuleFor(corrections => corrections.MaxSteps).Within(Ranges.CorrectionSteps, units);
    }
}
