using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Features.Forms;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Facets;

namespace FormApi.Features.Predictions;

/// <summary>
/// A panel, and the form it is to be pulled over: one that is planned first, or one that already exists and is given by its stations.
/// </summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> (with N, MPa, kg, J) or <c>in</c> (with lbf, psi,
/// lb, ft·lbf). Angles are in degrees.</param>
/// <param name="Panel">The panel that is wanted, and how it will be pulled. With <c>stations</c> leave out <c>trim</c>, <c>grain</c>,
/// <c>stockSheets</c>, <c>clamp.height</c> and, of <c>springback</c>, <c>model</c> and <c>factor</c>: they would have no use. <c>lever</c>
/// then reaches from the form's last fold (half a facet past a full one) to the hand.</param>
/// <param name="Form">The form. Default: as <c>/v1/forms</c> chooses it.
/// With <c>stations</c> leave out <c>stepping</c>, <c>grain</c>, <c>neutralFactor</c> and
/// <c>stop</c>: they would have no use.</param>
/// <param name="Brake">The brake the form is folded on; needed but with <c>stations</c>, which leave no use for it.</param>
/// <param name="Marks">How the flat form blank is marked; not with <c>stations</c>. Default: from the lead-in edge, on a tape in the
/// request's units.</param>
/// <param name="Ends">Half or full folds at the ends of a form given by its stations: it says where the clamp is. Default: <c>half</c>
/// where the first fold turns at most three quarters of the second, else <c>full</c>; null without stations.</param>
/// <param name="Stations">The folds of a form that already exists, from its lead-in. Default: null, the form is planned.</param>
internal sealed record PredictionRequest(
    LengthUnit Units,
    PanelInput Panel,
    FormInput? Form = null,
    BrakeInput? Brake = null,
    MarksInput? Marks = null,
    SteppingEnds? Ends = null,
    IReadOnlyList<StandingStationInput>? Stations = null) : IRequestBody<PredictionRequest>, IFoldedRequest
{
    /// <inheritdoc/>
    static JsonTypeInfo<PredictionRequest> IRequestBody<PredictionRequest>.TypeInfo => PredictionRequestJson.Strict.PredictionRequest;

    /// <inheritdoc/>
    bool IRequestBody<PredictionRequest>.HasNullItems => StationsRules.HasNull(this);

    /// <inheritdoc/>
    string? IRequestBody<PredictionRequest>.MissingField => FoldedRules.MissingField(this);

    /// <inheritdoc/>
    ValidationResult IRequestBody<PredictionRequest>.Check() => PredictionRequestRules.For(Units).Validate(this);
}

/// <summary>What a request must satisfy once its shape is right.</summary>
internal sealed class PredictionRequestRules : AbstractValidator<PredictionRequest>
{
    private static readonly PredictionRequestRules InMm = new(UnitSystem.Mm);
    private static readonly PredictionRequestRules InInch = new(UnitSystem.Inch);

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    internal PredictionRequestRules(UnitSystem units)
    {
        RuleFor(request => request.Panel).SetValidator(new PanelInputRules(units));
        RuleFor(request => request.Form!).SetValidator(new FormInputRules(units))
            .When(request => request is { Form: not null, Stations: null });
        RuleFor(request => request.Form!).SetValidator(new FormInputRules(units, isStanding: true))
            .When(request => request.Stations is not null);
        RuleFor(request => request.Brake!).SetValidator(new BrakeInputRules(units)).When(request => request.Brake is not null);
        RuleFor(request => request.Marks!).SetValidator(new MarksInputRules(units)).When(request => request.Marks is not null);
        RuleFor(request => request.Ends).Null()
            .Else("not-applicable", "The ends of a form that is planned are its stepping's.", "only with stations; else form.stepping.ends")
            .When(request => request.Stations is null);
        this.AddUnusedRules(_ => false, _ => true);
        this.AddStandingPanelRules();
        this.AddStationsRules(Ranges.StationCount, units);
        this.AddLeadOutRule(Ranges.StationCount);
    }

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public static PredictionRequestRules For(LengthUnit units) => units == LengthUnit.In ? InInch : InMm;
}
