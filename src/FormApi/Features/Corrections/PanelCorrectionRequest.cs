using System.Linq.Expressions;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Features.Forms;
using FormApi.Features.Inspections;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Facets;

namespace FormApi.Features.Corrections;

/// <summary>A panel off a form, and what was measured on it: the request for its plan, or the stations of the form as it is.</summary>
/// <param name="Units">Unit of every length.</param>
/// <param name="Panel">The panel as wanted and pulled; not a taper.</param>
/// <param name="Measured">What was measured.</param>
/// <param name="Form">The form.</param>
/// <param name="Brake">The brake; not with <c>stations</c>.</param>
/// <param name="Marks">The marks; not with <c>stations</c>.</param>
/// <param name="Ends">Only with <c>stations</c>. Default: by the first two folds.</param>
/// <param name="Stations">The folds as measured, within <c>panel.scatter.foldAngle</c>, here 0.1° by default. Default: as planned.</param>
/// <param name="Corrections">How folds may be corrected.</param>
internal sealed record PanelCorrectionRequest(
    LengthUnit Units,
    PanelInput Panel,
    MeasuredPanelInput Measured,
    FormInput? Form = null,
    BrakeInput? Brake = null,
    MarksInput? Marks = null,
    SteppingEnds? Ends = null,
    IReadOnlyList<StandingStationInput>? Stations = null,
    CorrectionInput? Corrections = null) : IRequestBody<PanelCorrectionRequest>, IFoldedRequest
{
    private static readonly PanelCorrectionRequestRules InMm = new(UnitSystem.Mm);
    private static readonly PanelCorrectionRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<PanelCorrectionRequest> IRequestBody<PanelCorrectionRequest>.TypeInfo =>
        PanelCorrectionRequestJson.Strict.PanelCorrectionRequest;

    /// <inheritdoc/>
    bool IRequestBody<PanelCorrectionRequest>.HasNullItems => StationsRules.HasNull(this);

    /// <inheritdoc/>
    string? IRequestBody<PanelCorrectionRequest>.MissingField => FoldedRules.MissingField(this);

    /// <inheritdoc/>
    ValidationResult IRequestBody<PanelCorrectionRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);
}

/// <summary>What was measured, one of it or more; 95 % of readings are within their error.</summary>
/// <param name="Sweep">Lead-in to lead-out [°].</param>
/// <param name="SweepError">Its error [°]. Default: 0.2.</param>
/// <param name="Radius">On the face that the curve is measured on [mm or in].</param>
/// <param name="RadiusError">Its error [mm or in]. Default: 0.5 mm.</param>
/// <param name="FromFold">Fold where its stretch begins. Default: the middle folds.</param>
/// <param name="ToFold">Fold where it ends.</param>
/// <param name="Points">Template points along that face from the lead-in, turning left in any frame [x, y] [mm or in].</param>
/// <param name="PointError">Their error [mm or in]. Default: 0.5 mm.</param>
internal sealed record MeasuredPanelInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Sweep = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? SweepError = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Radius = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? RadiusError = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? FromFold = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? ToFold = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<Pair>? Points = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? PointError = null);

/// <summary>What a measured panel must satisfy.</summary>
internal sealed class PanelCorrectionRequestRules : AbstractValidator<PanelCorrectionRequest>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public PanelCorrectionRequestRules(UnitSystem units)
    {
        this.AddFoldedRules(units, _ => false, _ => true);
        this.AddStandingPanelRules(isJudged: true);
        RuleFor(request => request.Measured).SetValidator(new MeasuredPanelInputRules(units));
        RuleFor(request => request.Measured.ToFold).Must((request, to) => !(to > request.Stations!.Count))
            .Else("out-of-range", request => $"The form has {request.Stations!.Count} folds.", request => $"at most {request.Stations!.Count}")
            .When(request => request.Stations is not null);
        RuleFor(request => request.Corrections!).SetValidator(new CorrectionInputRules(units))
            .When(request => request.Corrections is not null);
        RuleFor(request => request.Ends).Null()
            .Else("not-applicable", "The ends of a form that is planned are its stepping's.", "only with stations; else form.stepping.ends")
            .When(request => request.Stations is null);
        RuleFor(request => request.Panel.Curve).Must(curve => curve is not TaperInput)
            .Else("not-applicable", "Only the form of a straight panel is corrected by what was measured on a panel.", "a curve of parallel folds; for a taper correct the form by /v1/inspections, and plan with a springback strip");
        RuleFor(request => request.Panel.Springback!.Factor).Null()
            .Else("not-applicable", "A measured factor has no simulated pull behind it to compare a panel with.", "springback.effectiveYield, or leave springback out")
            .When(request => request.Panel.Springback is not null && request.Stations is null);
    }
}

/// <summary>What readings of a panel must satisfy.</summary>
internal sealed class MeasuredPanelInputRules : AbstractValidator<MeasuredPanelInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public MeasuredPanelInputRules(UnitSystem units)
    {
        RuleFor(measured => measured.Sweep).Within(Ranges.MeasuredSweep, units);
        RuleFor(measured => measured.SweepError).Within(Ranges.AngleError, units);
        RuleFor(measured => measured.Radius).Within(Ranges.CurveRadius, units);
        RuleFor(measured => measured.RadiusError).Within(Ranges.LengthError, units);
        RuleFor(measured => measured.PointError).Within(Ranges.LengthError, units);
        RuleFor(measured => measured.FromFold).Within(Ranges.StationCount with { Min = 1 }, units);
        RuleFor(measured => measured.ToFold).Within(Ranges.StationCount, units);
        RuleFor(measured => measured.ToFold).Must((measured, to) => to > measured.FromFold)
            .Else("choose-one", "The radius lies between two folds.", "fromFold and a larger toFold, or neither")
            .When(measured => measured.FromFold is not null || measured.ToFold is not null);
        RuleFor(measured => measured.Sweep).NotNull().Else("choose-one", "Nothing was measured.", "sweep, radius or points")
            .When(measured => measured is { Radius: null, Points: null });
        Needs(measured => measured.SweepError, measured => measured.Sweep is null, "sweep");
        Needs(measured => measured.RadiusError, measured => measured.Radius is null, "radius");
        Needs(measured => measured.FromFold, measured => measured.Radius is null, "radius");
        Needs(measured => measured.PointError, measured => measured.Points is null, "points");
        RuleFor(measured => CountOf(measured.Points)).Within(Ranges.TemplatePoints with { Min = LeastPoints }, units)
            .About(measured => measured.Points);
        RuleFor(measured => measured).Custom((measured, context) =>
        {
            var points = measured.Points ?? [];
            for (var i = 0; i < Math.Min(points.Count, (int)Ranges.TemplatePoints.Max); i++)
            {
                Coordinate(points[i].First, i, 0);
                Coordinate(points[i].Second, i, 1);
            }

            void Coordinate(double value, int point, int axis)
            {
                var range = Ranges.Coordinate;
                if (value >= range.MinIn(units) && value <= range.MaxIn(units))
                    return;
                context.FaultAt(
                    checking => checking.Points,
                    double.IsFinite(value) ? "out-of-range" : "not-finite",
                    double.IsFinite(value) ? "The value is outside its range." : FiniteRule.Message,
                    range.Text(units),
                    FormattableString.Invariant($"[{point}][{axis}]"));
            }
        });
    }

    private const int LeastPoints = 5;

    private void Needs<TField>(
        Expression<Func<MeasuredPanelInput, TField>> field, Func<MeasuredPanelInput, bool> isMissing, string other) =>
        RuleFor(field).Null().Else("not-applicable", $"It says something of a reading that is not there: {other}.", $"only with {other}")
            .When(isMissing);

    private static int? CountOf(IReadOnlyList<Pair>? points) => points?.Count;
}
