using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;

namespace FormApi.Features.Forms;

/// <summary>A finished curve in a panel, the form it is to be wrapped over, the brake the form is folded on.</summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> (with N, MPa, kg, J) or <c>in</c> (with lbf, psi,
/// lb, ft·lbf). Angles are in degrees.</param>
/// <param name="Panel">The finished panel that is wanted, and how it will be pulled.</param>
/// <param name="Form">The faceted form to be folded. Default: what a shop would take, named in <c>basis</c>.</param>
/// <param name="Brake">The brake the form is folded on. Default: a leaf brake as long as the form's longest fold.</param>
/// <param name="Marks">How the flat form blank is marked. Default: from the lead-in edge, on a tape in the request's units.</param>
/// <param name="Sheet">What is written on the job's sheets: title, part, customer and so on. Default: nothing.</param>
internal sealed record FormRequest(
    LengthUnit Units,
    PanelInput Panel,
    FormInput? Form = null,
    BrakeInput? Brake = null,
    MarksInput? Marks = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] TitleBlockInput? Sheet = null) : IRequestBody<FormRequest>
{
    /// <inheritdoc/>
    static JsonTypeInfo<FormRequest> IRequestBody<FormRequest>.TypeInfo => FormRequestJson.Strict.FormRequest;

    /// <inheritdoc/>
    bool IRequestBody<FormRequest>.HasNullItems => HasNull(Panel);

    /// <inheritdoc/>
    string? IRequestBody<FormRequest>.MissingField => MissingOf(Panel);

    /// <inheritdoc/>
    ValidationResult IRequestBody<FormRequest>.Check() => FormRequestRules.For(Units).Validate(this);

    /// <summary>Whether a list of a panel holds a null.</summary>
    /// <param name="panel">The panel.</param>
    internal static bool HasNull(PanelInput panel) =>
        panel.StockSheets is { } sheets && sheets.Contains(null)
        || panel.Curve is SegmentsInput chain && HasNull(chain);

    /// <summary>Pointer of a panel's field that is missing because of its curve, or null.</summary>
    /// <param name="panel">The panel.</param>
    internal static string? MissingOf(PanelInput panel) =>
        MeasuredCurves.MissingOf(panel.Curve, "/panel/curve") ?? (panel is { Width: null, Curve: not TaperInput } ? "/panel/width" : null);

    private static bool HasNull(SegmentsInput chain) =>
        chain.Segments.Any(piece => piece is null || piece is SegmentsInput inner && HasNull(inner));
}

/// <summary>What a request must satisfy once its shape is right.</summary>
internal sealed class FormRequestRules : AbstractValidator<FormRequest>
{
    private static readonly FormRequestRules InMm = new(UnitSystem.Mm);
    private static readonly FormRequestRules InInch = new(UnitSystem.Inch);

    private FormRequestRules(UnitSystem units)
    {
        RuleFor(request => request.Panel).SetValidator(new PanelInputRules(units));
        RuleFor(request => request.Form!).SetValidator(new FormInputRules(units)).When(request => request.Form is not null);
        RuleFor(request => request.Brake!).SetValidator(new BrakeInputRules(units)).When(request => request.Brake is not null);
        RuleFor(request => request.Marks!).SetValidator(new MarksInputRules(units)).When(request => request.Marks is not null);
        RuleFor(request => request.Sheet!).SetValidator(TitleBlockInputRules.Rules).When(request => request.Sheet is not null);
    }

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public static FormRequestRules For(LengthUnit units) => units == LengthUnit.In ? InInch : InMm;
}
