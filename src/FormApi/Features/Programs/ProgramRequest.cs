using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Features.Forms;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;

namespace FormApi.Features.Programs;

/// <summary>A form, planned first or given by its stations, and the brake with its tools that is to fold it.</summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> (with N, MPa, kg, J) or <c>in</c> (with lbf, psi,
/// lb, ft·lbf). Angles are in degrees.</param>
/// <param name="Form">The form. Default: as <c>/v1/forms</c> chooses it.
/// With <c>stations</c> give <c>width</c>, and leave out <c>stepping</c>: it would have no use.</param>
/// <param name="Brake">The brake and its tools. Default: a leaf brake with generic tools.</param>
/// <param name="Panel">The panel that the form is planned for; needed but with <c>stations</c>, which leave no use for it.</param>
/// <param name="Marks">How the flat form blank is marked; not with <c>stations</c>. Default: from the lead-in edge, on a tape in the
/// request's units.</param>
/// <param name="Stations">The folds of a form that is known already, from its lead-in. Default: null, the form is planned.</param>
/// <param name="Sheet">What is written on the job's sheets: title, part, customer and so on. Default: nothing.</param>
internal sealed record ProgramRequest(
    LengthUnit Units,
    FormInput? Form = null,
    ProgramBrakeInput? Brake = null,
    PanelInput? Panel = null,
    MarksInput? Marks = null,
    IReadOnlyList<StandingStationInput>? Stations = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] TitleBlockInput? Sheet = null)
    : IRequestBody<ProgramRequest>, IStationsRequest
{
    /// <inheritdoc/>
    static JsonTypeInfo<ProgramRequest> IRequestBody<ProgramRequest>.TypeInfo => ProgramRequestJson.Strict.ProgramRequest;

    /// <inheritdoc/>
    bool IRequestBody<ProgramRequest>.HasNullItems => StationsRules.HasNull(this);

    /// <inheritdoc/>
    string? IRequestBody<ProgramRequest>.MissingField => Stations is not null
        ? FoldedRules.MissingStanding(Form) ?? MissingTools()
        : Panel is null ? "/panel" : FormRequest.MissingOf(Panel);

    private string? MissingTools() => (Form!.Width, Brake) switch
    {
        (null, _) => "/form/width",
        (_, null) => "/brake",
        (_, { Length: null }) => "/brake/length",
        _ => null,
    };

    /// <inheritdoc/>
    ValidationResult IRequestBody<ProgramRequest>.Check() => ProgramRequestRules.For(Units).Validate(this);
}

/// <summary>What a request must satisfy once its shape is right.</summary>
internal sealed class ProgramRequestRules : AbstractValidator<ProgramRequest>
{
    private static readonly ProgramRequestRules InMm = new(UnitSystem.Mm);
    private static readonly ProgramRequestRules InInch = new(UnitSystem.Inch);

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    internal ProgramRequestRules(UnitSystem units)
    {
        RuleFor(request => request.Panel!).SetValidator(new PanelInputRules(units))
            .When(request => request is { Panel: not null, Stations: null });
        RuleFor(request => request.Form!).SetValidator(new FormInputRules(units))
            .When(request => request is { Form: not null, Stations: null });
        RuleFor(request => request.Form!).SetValidator(new FormInputRules(units, mustHaveSheet: true))
            .When(request => request.Stations is not null);
        RuleFor(request => request.Brake!).SetValidator(new ProgramBrakeInputRules(units)).When(request => request.Brake is not null);
        RuleFor(request => request.Marks!).SetValidator(new MarksInputRules(units))
            .When(request => request is { Marks: not null, Stations: null });
        RuleFor(request => request.Sheet!).SetValidator(TitleBlockInputRules.Rules).When(request => request.Sheet is not null);
        When(request => request.Stations is not null, () =>
        {
            const string why = "where the form folds is known already";
            this.Unused(request => request.Panel, why);
            this.Unused(request => request.Marks, why);
            this.Unused(request => request.Form!.Stepping, why);
        });
        this.AddStationsRules(Ranges.ProgramStationCount, units);
        this.AddLeadOutRule(Ranges.ProgramStationCount);
    }

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public static ProgramRequestRules For(LengthUnit units) => units == LengthUnit.In ? InInch : InMm;
}
