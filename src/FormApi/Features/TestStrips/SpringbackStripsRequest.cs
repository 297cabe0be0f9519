using System.Linq.Expressions;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Features.Forms;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>Strips pulled round a bar or over a faceted form and let go, and what was left of the bend.</summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> (with MPa) or <c>in</c> (with psi).</param>
/// <param name="Material">Material of the strips: elastic constants and hardening are taken from it, and the yield stress to compare
/// with.</param>
/// <param name="Strips">The strips; one will do, two show how much they scatter.</param>
/// <param name="Thickness">Thickness of the panel to come [mm or in], and of every strip that gives none; this or <c>gauge</c>.</param>
/// <param name="Gauge">Gauge number; this or <c>thickness</c>.</param>
/// <param name="GaugeSystem">The gauge's system, an id of <c>/v1/gauges</c>. Default: the material's own.</param>
/// <param name="ReadingError">95 % of measured finished radii lie within this share of the true one [%]. Default: 2, an assumption.</param>
/// <param name="SweepError">The same of sweeps [°]. Default: 0.5.</param>
/// <param name="FoldError">The same of stations' angles [°]. Default: 0.3.</param>
/// <param name="Targets">Finished inside radii of the panel to come [mm or in]. Default: null, the middle one of the strips.</param>
/// <param name="Tolerance">How far the first target may be off [mm or in]. Default: 1 mm.</param>
internal sealed record SpringbackStripsRequest(
    LengthUnit Units,
    MaterialInput Material,
    IReadOnlyList<SpringbackStripInput> Strips,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Gauge = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? GaugeSystem = null,
    double? ReadingError = null,
    double? SweepError = null,
    double? FoldError = null,
    IReadOnlyList<double>? Targets = null,
    double? Tolerance = null) : IStripsRequest<SpringbackStripsRequest>, ISheetInput
{
    private static readonly SpringbackStripsRequestRules InMm = new(UnitSystem.Mm);
    private static readonly SpringbackStripsRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<SpringbackStripsRequest> IRequestBody<SpringbackStripsRequest>.TypeInfo =>
        StripRequestJson.Strict.SpringbackStripsRequest;

    /// <inheritdoc/>
    bool IRequestBody<SpringbackStripsRequest>.HasNullItems =>
        Strips.Contains(null) || Strips.Any(strip => strip.Stations?.Contains(null!) == true);

    /// <inheritdoc/>
    string? IRequestBody<SpringbackStripsRequest>.MissingField => StripFigures.FirstMissing(Strips, strip => strip.MissingField);

    /// <inheritdoc/>
    ValidationResult IRequestBody<SpringbackStripsRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);

    /// <inheritdoc/>
    public SpringbackStripsRequest WithDefaults() => this with
    {
        GaugeSystem = Gauge is null ? null : SheetRules.GaugeSystemOf(this),
        ReadingError = ReadingError ?? 2,
        SweepError = SweepError ?? 0.5,
        FoldError = FoldError ?? 0.3,
        Tolerance = Tolerance ?? UnitSystem.Of(Units).Length(1),
        Strips = [.. Strips.Select(strip => strip.WithDefaults())],
    };

    /// <summary>What the library is asked, once defaults are filled in.</summary>
    public SpringbackQuestion ToQuestion()
    {
        var units = UnitSystem.Of(Units);
        var sheet = FormSpecs.SheetFrom(this, units);
        return new()
        {
            Sheet = sheet,
            Strips = [.. Strips.Select(strip => strip.ToStrip(units, sheet.ThicknessMm))],
            ReadingError = ReadingError!.Value / 100,
            SweepError = Angle.FromDegrees(SweepError!.Value),
            FoldError = Angle.FromDegrees(FoldError!.Value),
            TargetsMm = [.. (Targets ?? []).Select(units.ToMm)],
            ToleranceMm = units.ToMm(Tolerance!.Value),
        };
    }
}

/// <summary>A strip pulled and let go.</summary>
/// <param name="Over">Default: <c>form</c> with <c>stations</c>, else <c>round</c>.</param>
/// <param name="FormRadius">Radius of the bar [mm or in]; needed round one.</param>
/// <param name="FinishedRadius">Inside radius after letting go [mm or in]; over a form from the third fold to the last but one. Needed, but
/// not beside <c>finishedSweep</c>.</param>
/// <param name="FinishedSweep">Sweep after letting go [°]; over a form.</param>
/// <param name="Thickness">Its thickness as measured [mm or in]. Default: the request's.</param>
/// <param name="Width">Its width [mm or in]. Default: null, as a wide sheet.</param>
/// <param name="Stations">Folds of the form, from its lead-in.</param>
/// <param name="Lever">From the form's last fold (half a facet past a full one) to the hand [mm or in]; over a form.</param>
internal sealed record SpringbackStripInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] StripOver? Over = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? FormRadius = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? FinishedRadius = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? FinishedSweep = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Width = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<StandingStationInput>? Stations = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Lever = null)
{
    /// <summary>Whether it was pulled over a faceted form.</summary>
    internal bool IsOverForm => Over == StripOver.Form || (Over is null && Stations is not null);

    /// <summary>JSON pointer within the strip of a field that it needs and lacks; null where none is missing.</summary>
    internal string? MissingField => this switch
    {
        { IsOverForm: true, Stations: null } => "/stations",
        { IsOverForm: true, Lever: null } => "/lever",
        { IsOverForm: false, FormRadius: null } => "/formRadius",
        { FinishedRadius: null, FinishedSweep: null } or { IsOverForm: false, FinishedRadius: null } => "/finishedRadius",
        _ => null,
    };

    /// <summary>The strip with every default shown.</summary>
    internal SpringbackStripInput WithDefaults() => this with { Over = IsOverForm ? StripOver.Form : StripOver.Round };

    /// <summary>The strip in the library's units.</summary>
    /// <param name="units">The caller's units.</param>
    /// <param name="thicknessMm">Thickness where it gives none [mm].</param>
    internal SpringbackStrip ToStrip(UnitSystem units, double thicknessMm) => new(
        IsOverForm ? StripForms.Of(Stations!, Lever!.Value, units) : new RoundBar(units.ToMm(FormRadius!.Value)),
        Thickness is { } own ? units.ToMm(own) : thicknessMm)
    {
        FinishedRadiusMm = FinishedRadius is { } radius ? units.ToMm(radius) : null,
        FinishedSweep = FinishedSweep is { } sweep ? Angle.FromDegrees(sweep) : null,
        WidthMm = Width is { } width ? units.ToMm(width) : null,
        IsThicknessMeasured = Thickness is not null,
    };
}

/// <summary>What a strip is pulled round.</summary>
internal enum StripOver
{
    /// <summary>A round bar.</summary>
    Round,

    /// <summary>A faceted form.</summary>
    Form,
}

/// <summary>What strips pulled round a bar or over a form must satisfy.</summary>
internal sealed class SpringbackStripsRequestRules : AbstractValidator<SpringbackStripsRequest>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SpringbackStripsRequestRules(UnitSystem units)
    {
        this.AddSheetRules(units);
        this.AddStripRules(request => request.Strips, new SpringbackStripInputRules(units), units);
        RuleFor(request => request.ReadingError).Within(Ranges.RadiusErrorPercent, units);
        RuleFor(request => request.SweepError).Within(Ranges.AngleError, units);
        RuleFor(request => request.FoldError).Within(Ranges.AngleScatter, units);
        this.AddTargetRules(request => request.Targets, Ranges.CurveRadius, units);
        RuleFor(request => request.Tolerance).Within(Ranges.StripTolerance, units);
    }
}

/// <summary>What a strip pulled round a bar or over a form must satisfy.</summary>
internal sealed class SpringbackStripInputRules : AbstractValidator<SpringbackStripInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SpringbackStripInputRules(UnitSystem units)
    {
        RuleFor(strip => strip.FormRadius).Within(Ranges.CurveRadius, units);
        RuleFor(strip => strip.FinishedRadius).Within(Ranges.CurveRadius, units);
        RuleFor(strip => strip.FinishedSweep).Within(Ranges.StripSweep, units);
        RuleFor(strip => strip.Thickness).Within(Ranges.Thickness, units);
        RuleFor(strip => strip.Width).Within(Ranges.StripWidth, units);
        RuleFor(strip => strip.Lever).Within(Ranges.StripLever, units);
        this.AddStripForm(strip => strip.Stations, units);
        RuleFor(strip => strip.FinishedRadius).Must((strip, finished) => !(finished <= strip.FormRadius))
            .Else("springs-inwards", "The strip is not wider than its form: a sheet springs open, never closed.", "above formRadius")
            .When(strip => !strip.IsOverForm);
        When(strip => strip.IsOverForm, () => RuleFor(strip => strip.FormRadius).Null()
            .Else("not-applicable", "It is not used over a faceted form, whose stations give its radius.", "leave it out, or leave out stations"));
        When(strip => !strip.IsOverForm, () =>
        {
            OnlyOverForm(strip => strip.Stations);
            OnlyOverForm(strip => strip.Lever);
            OnlyOverForm(strip => strip.FinishedSweep);
        });

        void OnlyOverForm<TField>(Expression<Func<SpringbackStripInput, TField>> field) => RuleFor(field).Null()
            .Else("not-applicable", "It is not used round a bar.", "leave it out, or give over: form with stations and lever");
    }
}
