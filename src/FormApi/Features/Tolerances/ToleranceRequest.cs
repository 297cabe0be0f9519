using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Features.Forms;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Tolerances;

namespace FormApi.Features.Tolerances;

/// <summary>How well folds are made, and the form they are to make: the request for its plan, or its stations.</summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> or <c>in</c>. Angles are in degrees.</param>
/// <param name="Form">The form. Default: as <c>/v1/forms</c> chooses it.
/// With <c>stations</c> leave out <c>width</c>, <c>stepping</c>, <c>grain</c>, <c>neutralFactor</c> and
/// <c>stop</c>: they would have no use.</param>
/// <param name="Panel">The panel; needed but with <c>stations</c>, which leave no use for it.</param>
/// <param name="Brake">The brake; needed but with <c>stations</c>, which leave no use for it.</param>
/// <param name="Marks">How the flat form blank is marked; not with <c>stations</c>. Default: from the lead-in edge, on a tape in the
/// request's units.</param>
/// <param name="Stations">The folds of the form, from its lead-in. Default: null, the form is planned.</param>
/// <param name="Accuracy">How well folds are made. Default: an assumption for hand-set brakes, ±1° and ±0.8 mm at two standard
/// deviations.</param>
/// <param name="Tolerance">The tolerance of the form. Default: null, errors are only added up.</param>
internal sealed record ToleranceRequest(
    LengthUnit Units,
    FormInput? Form = null,
    PanelInput? Panel = null,
    BrakeInput? Brake = null,
    MarksInput? Marks = null,
    IReadOnlyList<StandingStationInput>? Stations = null,
    AccuracyInput? Accuracy = null,
    ToleranceInput? Tolerance = null) : IRequestBody<ToleranceRequest>, IFoldedRequest
{
    private const double Coverage = 2;

    private static readonly ToleranceRequestRules InMm = new(UnitSystem.Mm);
    private static readonly ToleranceRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<ToleranceRequest> IRequestBody<ToleranceRequest>.TypeInfo => ToleranceRequestJson.Strict.ToleranceRequest;

    /// <inheritdoc/>
    bool IRequestBody<ToleranceRequest>.HasNullItems => StationsRules.HasNull(this);

    /// <inheritdoc/>
    string? IRequestBody<ToleranceRequest>.MissingField => FoldedRules.MissingField(this);

    /// <inheritdoc/>
    ValidationResult IRequestBody<ToleranceRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);

    /// <summary>The request with every default shown, still in the caller's units.</summary>
    public ToleranceRequest WithDefaults()
    {
        var units = UnitSystem.Of(Units);
        var whole = this with
        {
            Accuracy = new(
                Accuracy?.Bias ?? UnitSystem.Degrees(FoldAccuracy.Default.Bias),
                Accuracy?.Scatter ?? UnitSystem.Degrees(FoldAccuracy.Default.Scatter),
                Accuracy?.MarkScatter ?? units.Length(FoldAccuracy.Default.MarkScatterMm),
                AssumedOf(Accuracy)),
            Tolerance = Tolerance is { } tolerance ? tolerance with { Coverage = tolerance.Coverage ?? Coverage } : null,
        };
        if (Stations is not null)
            return whole with { Form = Form! with { GaugeSystem = FormDefaults.GaugeSystemOf(Form) } };
        var form = FormDefaults.Apply(FoldedForm.AsForm(this));
        return whole with { Panel = form.Panel, Form = form.Form, Brake = form.Brake, Marks = form.Marks };
    }

    /// <summary>The accuracy in the library's units, once defaults are filled in.</summary>
    public FoldAccuracy ToAccuracy() => new(
        Angle.FromDegrees(Accuracy!.Bias!.Value),
        Angle.FromDegrees(Accuracy.Scatter!.Value),
        UnitSystem.Of(Units).ToMm(Accuracy.MarkScatter!.Value))
    {
        ScatterIsAssumed = Accuracy.Assumed!.Contains(AccuracyFigure.Scatter),
        MarkScatterIsAssumed = Accuracy.Assumed!.Contains(AccuracyFigure.MarkScatter),
    };

    // Named in the echo, so that a request and its echo give one answer, and a caller's own value is not called an assumption.
    private static AccuracyFigure[] AssumedOf(AccuracyInput? accuracy) => accuracy?.Assumed is { } named
        ? [.. named.Distinct().Order()]
        : [.. Enum.GetValues<AccuracyFigure>()
            .Where(figure => figure == AccuracyFigure.Scatter ? accuracy?.Scatter is null : accuracy?.MarkScatter is null)];

    /// <summary>The tolerance in the library's units, or null.</summary>
    public WantedTolerance? ToTolerance() => Tolerance is { } wanted
        ? new(Angle.FromDegrees(wanted.Closing), UnitSystem.Of(Units).ToMm(wanted.End), wanted.Coverage!.Value)
        : null;
}

/// <summary>How well folds are made.</summary>
/// <param name="Bias">What every fold turns too far [°]; negative is too little. Default: 0.</param>
/// <param name="Scatter">Standard deviation of a fold angle about that [°]. Default: 0.5, which is ±1° at two standard deviations; an
/// assumption.</param>
/// <param name="MarkScatter">Standard deviation of a mark from the datum [mm or in]; both edges of the blank count as exact. Default: 0.4
/// mm, which is ±0.8 mm at two standard deviations; an assumption.</param>
/// <param name="Assumed">Which values nobody measured: <c>scatter</c>, <c>mark-scatter</c>. Default: those that are left out.</param>
internal sealed record AccuracyInput(
    double? Bias = null, double? Scatter = null, double? MarkScatter = null, IReadOnlyList<AccuracyFigure>? Assumed = null);

/// <summary>A value of the accuracy that may be assumed.</summary>
internal enum AccuracyFigure
{
    /// <summary>Scatter of the fold angles.</summary>
    Scatter,

    /// <summary>Scatter of the marks.</summary>
    MarkScatter,
}

/// <summary>The tolerance of a form.</summary>
/// <param name="Closing">Error of the sum of all folds, to either side [°].</param>
/// <param name="End">Distance of the end of the lead-out from its planned place, the first flat fixed [mm or in].</param>
/// <param name="Coverage">Standard deviations that have to fit in. Default: 2, about 95 % of forms.</param>
internal sealed record ToleranceInput(double Closing, double End, double? Coverage = null);

/// <summary>What a request for an error budget must satisfy.</summary>
internal sealed class ToleranceRequestRules : AbstractValidator<ToleranceRequest>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ToleranceRequestRules(UnitSystem units)
    {
        this.AddFoldedRules(units, _ => false, _ => false);
        RuleFor(request => request.Accuracy!).SetValidator(new AccuracyInputRules(units)).When(request => request.Accuracy is not null);
        RuleFor(request => request.Tolerance!).SetValidator(new ToleranceInputRules(units)).When(request => request.Tolerance is not null);
        this.Unused(request => request.Panel).When(request => request.Stations is not null);
    }
}

/// <summary>What an accuracy must satisfy.</summary>
internal sealed class AccuracyInputRules : AbstractValidator<AccuracyInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public AccuracyInputRules(UnitSystem units)
    {
        RuleFor(accuracy => accuracy.Bias).Within(Ranges.AngleBias, units);
        RuleFor(accuracy => accuracy.Scatter).Within(Ranges.AngleScatter, units);
        RuleFor(accuracy => accuracy.MarkScatter).Within(Ranges.MarkScatter, units);
    }
}

/// <summary>What a wanted tolerance must satisfy.</summary>
internal sealed class ToleranceInputRules : AbstractValidator<ToleranceInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ToleranceInputRules(UnitSystem units)
    {
        RuleFor(tolerance => tolerance.Closing).Within(Ranges.ClosingTolerance, units);
        RuleFor(tolerance => tolerance.End).Within(Ranges.PlaceTolerance, units);
        RuleFor(tolerance => tolerance.Coverage).Within(Ranges.Coverage, units);
    }
}
