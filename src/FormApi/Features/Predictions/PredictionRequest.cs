using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Features.Forms;
using FormApi.Http;
using Forming.Facets;

namespace FormApi.Features.Predictions;

/// <summary>A panel, and the form it is to be pulled over: one that is planned first, or one that stands already and is given by its stations.</summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> (with N, MPa, kg, J) or <c>in</c> (with lbf, psi, lb, ft·lbf). Angles are in degrees.</param>
/// <param name="Panel">The panel that is wanted, and how it will be pulled. With <c>stations</c> leave out <c>trim</c>, <c>grain</c>, <c>stockSheets</c>, <c>clamp.height</c> and, of <c>springback</c>, <c>model</c> and <c>factor</c>: they would have no use. <c>lever</c> then reaches from the form's last fold (half a facet past a full one) to the hand.</param>
/// <param name="Form">The form. With <c>stations</c> leave out <c>width</c>, <c>stepping</c>, <c>grain</c>, <c>neutralFactor</c> and <c>stop</c>: they would have no use.</param>
/// <param name="Brake">The brake the form is folded on; needed but with <c>stations</c>, which leave no use for it.</param>
/// <param name="Marks">How the flat form blank is marked; not with <c>stations</c>. Default: from the lead-in edge, on a tape in the request's units.</param>
/// <param name="Ends">Half or full folds at the ends of a form given by its stations: it says where the clamp stands. Default: <c>half</c> where the first fold turns at most three quarters of the second, else <c>full</c>; null without stations.</param>
/// <param name="Stations">The folds of a form that stands already, from its lead-in. Default: null, the form is planned.</param>
internal sealed record PredictionRequest(
    LengthUnit Units,
    PanelInput Panel,
    FormInput Form,
    BrakeInput? Brake = null,
    MarksInput? Marks = null,
    SteppingEnds? Ends = null,
    IReadOnlyList<StandingStationInput>? Stations = null) : IRequestBody<PredictionRequest>
{
    /// <inheritdoc/>
    static JsonTypeInfo<PredictionRequest> IRequestBody<PredictionRequest>.TypeInfo => WireJson.Requests.PredictionRequest;

    /// <inheritdoc/>
    bool IRequestBody<PredictionRequest>.HasNullItems => FormRequest.HasNull(Panel) || Stations is { } stations && stations.Contains(null);

    /// <inheritdoc/>
    string? IRequestBody<PredictionRequest>.MissingField =>
        FormRequest.MissingOf(Panel) ?? (Stations is null && Brake is null ? "/brake" : null);

    /// <inheritdoc/>
    ValidationResult IRequestBody<PredictionRequest>.Check() => PredictionRequestRules.For(Units).Validate(this);
}

/// <summary>One fold of a form that stands already, named as a form's answer names it.</summary>
/// <param name="Angle">Fold angle as it stands [°].</param>
/// <param name="FacetAfter">Facet after this fold on the contact side, mold line to mold line [mm or in]; after the last the lead-out, as <c>form.leadOut</c> has it.</param>
internal sealed record StandingStationInput(double Angle, double FacetAfter);

/// <summary>What a request must satisfy once its shape is right.</summary>
internal sealed class PredictionRequestRules : Rules<PredictionRequest>
{
    // What a form's answer loses by its nine decimals, and a tape reads off.
    private const double SameLength = 1e-6;

    private static readonly PredictionRequestRules InMm = new(UnitSystem.Mm);
    private static readonly PredictionRequestRules InInch = new(UnitSystem.Inch);

    /// <summary>The rules with their limits in a caller's units.</summary>
    /// <param name="units">The units.</param>
    internal PredictionRequestRules(UnitSystem units)
    {
        RuleFor(request => request.Panel).SetValidator(new PanelInputRules(units));
        RuleFor(request => request.Form).SetValidator(new FormInputRules(units)).When(request => request.Stations is null);
        RuleFor(request => request.Form).SetValidator(new FormInputRules(units, isStanding: true)).When(request => request.Stations is not null);
        RuleFor(request => request.Brake!).SetValidator(new BrakeInputRules(units)).When(request => request.Brake is not null);
        RuleFor(request => request.Marks!).SetValidator(new MarksInputRules(units)).When(request => request.Marks is not null);
        RuleFor(request => request).Custom(CheckUse);
        When(request => request.Stations is not null, () =>
        {
            RuleFor(request => request.Stations!.Count).Within(Ranges.StationCount, units).OverridePropertyName("stations");
            RuleForEach(request => request.Stations!.Take((int)Ranges.StationCount.Max))
                .SetValidator(new StandingStationInputRules(units)).OverridePropertyName("stations");
            RuleFor(request => request).Custom((request, context) => CheckLeadOut(request.Stations!, request.Form, context));
        });
    }

    /// <summary>The rules with their limits in a caller's units.</summary>
    /// <param name="units">The units.</param>
    public static PredictionRequestRules For(LengthUnit units) => units == LengthUnit.In ? InInch : InMm;

    private static void CheckUse(PredictionRequest request, ValidationContext<PredictionRequest> context)
    {
        if (request.Stations is null)
        {
            if (request.Ends is not null)
                context.FaultAt("ends", "not-applicable", "The ends of a form that is planned are its stepping's.", "only with stations; else form.stepping.ends");
            return;
        }

        CheckUnused(request.Form, request.Brake, request.Marks, context);
        CheckUnused(request.Panel, context);
    }

    /// <summary>Refuses what a form given by its stations leaves no use for.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="form">Its form.</param>
    /// <param name="brake">Its brake, or null.</param>
    /// <param name="marks">Its marks, or null.</param>
    /// <param name="context">The check, on the request itself.</param>
    /// <param name="isFlatUsed">Whether the flat blank has a use, and with it the neutral factor.</param>
    internal static void CheckUnused<T>(FormInput form, BrakeInput? brake, MarksInput? marks, ValidationContext<T> context, bool isFlatUsed = false)
    {
        Unused(context, "brake", brake);
        Unused(context, "marks", marks);
        Unused(context, "form.width", form.Width);
        Unused(context, "form.stepping", form.Stepping);
        Unused(context, "form.grain", form.Grain);
        if (!isFlatUsed)
            Unused(context, "form.neutralFactor", form.NeutralFactor);
        Unused(context, "form.stop", form.Stop);
    }

    /// <summary>Refuses what a panel over a form given by its stations has no use for.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="panel">Its panel.</param>
    /// <param name="context">The check, on the request itself.</param>
    internal static void CheckUnused<T>(PanelInput panel, ValidationContext<T> context)
    {
        Unused(context, "panel.trim", panel.Trim);
        Unused(context, "panel.grain", panel.Grain);
        Unused(context, "panel.clamp.height", panel.Clamp?.Height);
        Unused(context, "panel.springback.model", panel.Springback?.Model);
        Unused(context, "panel.springback.factor", panel.Springback?.Factor);
        Unused(context, "panel.stockSheets", panel.StockSheets);
    }

    /// <summary>Refuses a field where stations are given.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="context">The check, on the request itself.</param>
    /// <param name="field">Dotted path of the field.</param>
    /// <param name="given">Its value, or null.</param>
    internal static void Unused<T>(ValidationContext<T> context, string field, object? given)
    {
        if (given is not null)
            context.FaultAt(field, "not-applicable", "It is not used when stations are given: the form stands already.", "leave it out, or leave out stations");
    }

    /// <summary>Refuses stations whose last facet is not the form's lead-out.</summary>
    /// <typeparam name="T">The request.</typeparam>
    /// <param name="stations">The stations.</param>
    /// <param name="form">The form.</param>
    /// <param name="context">The check, on the request itself.</param>
    internal static void CheckLeadOut<T>(IReadOnlyList<StandingStationInput> stations, FormInput form, ValidationContext<T> context)
    {
        if (stations is not [.., var last] || stations.Count > Ranges.StationCount.Max)
            return;
        var (given, leadOut) = (last.FacetAfter, form.LeadOut);
        if (!(Math.Abs(given - leadOut) <= SameLength * Math.Max(1, leadOut)))
        {
            context.FaultAt(
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"stations[{stations.Count - 1}].facetAfter"),
                "contradicts",
                "The facet after the last fold is the lead-out, and form.leadOut says otherwise.",
                "the same length as form.leadOut");
        }
    }
}

/// <summary>What a fold of a standing form must satisfy.</summary>
internal sealed class StandingStationInputRules : Rules<StandingStationInput>
{
    /// <summary>The rules with their limits in a caller's units.</summary>
    /// <param name="units">The units.</param>
    public StandingStationInputRules(UnitSystem units)
    {
        RuleFor(station => station.Angle).Within(Ranges.StandingAngle, units);
        RuleFor(station => station.FacetAfter).Within(Ranges.StandingFacet, units);
    }
}
