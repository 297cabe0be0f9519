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

/// <summary>Strips pulled over facets and judged by eye.</summary>
/// <param name="Units">Unit of every length in the request and in the answer.</param>
/// <param name="Material">Material of the strips; its hardening decides how much facets show.</param>
/// <param name="Strips">The strips: the most useful are a smooth one and one that just shows.</param>
/// <param name="Thickness">Thickness of every strip that gives none [mm or in]; this or <c>gauge</c>.</param>
/// <param name="Gauge">Gauge number; this or <c>thickness</c>.</param>
/// <param name="GaugeSystem">The gauge's system, an id of <c>/v1/gauges</c>. Default: the material's own.</param>
internal sealed record PrintThroughStripsRequest(
    LengthUnit Units,
    MaterialInput Material,
    IReadOnlyList<PrintThroughStripInput> Strips,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Gauge = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? GaugeSystem = null)
    : IStripsRequest<PrintThroughStripsRequest>, ISheetInput
{
    private static readonly PrintThroughStripsRequestRules InMm = new(UnitSystem.Mm);
    private static readonly PrintThroughStripsRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<PrintThroughStripsRequest> IRequestBody<PrintThroughStripsRequest>.TypeInfo =>
        StripRequestJson.Strict.PrintThroughStripsRequest;

    /// <inheritdoc/>
    bool IRequestBody<PrintThroughStripsRequest>.HasNullItems =>
        Strips.Contains(null) || Strips.Any(strip => strip.Stations?.Contains(null!) == true);

    /// <inheritdoc/>
    string? IRequestBody<PrintThroughStripsRequest>.MissingField => StripFigures.FirstMissing(Strips, strip => strip.MissingField);

    /// <inheritdoc/>
    ValidationResult IRequestBody<PrintThroughStripsRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);

    /// <inheritdoc/>
    public PrintThroughStripsRequest WithDefaults() => this with
    {
        GaugeSystem = Gauge is null ? null : SheetRules.GaugeSystemOf(this),
        Strips = [.. Strips.Select(strip => strip.WithDefaults())],
    };

    /// <summary>What the library is asked, once defaults are filled in.</summary>
    public PrintQuestion ToQuestion()
    {
        var units = UnitSystem.Of(Units);
        var sheet = FormSpecs.SheetFrom(this, units);
        return new(
            sheet.Material,
            [.. Strips.Select(strip => strip.ToStrip(units, sheet.ThicknessMm))]);
    }
}

/// <summary>A strip pulled over facets and judged by eye.</summary>
/// <param name="Verdict">Whether the facets show: <c>smooth</c> or <c>shows</c>.</param>
/// <param name="Facet">Facet of the form on its contact side [mm or in]; this and <c>radius</c>, or <c>stations</c>.</param>
/// <param name="Radius">Radius of the form's contact curve [mm or in].</param>
/// <param name="Thickness">Its thickness [mm or in]. Default: the request's.</param>
/// <param name="Lever">From the fold that the strip touches at the facet looked at to the hand [mm or in]; needed with <c>stations</c>, from
/// the last fold. Default: null, the longest that keeps the wrap in order, at most 250 mm.</param>
/// <param name="FirstFacet">Whether the facet looked at is the first after the lead-in, with a half fold before it. Default: false.</param>
/// <param name="Width">Its width [mm or in]. Default: null, as a wide sheet.</param>
/// <param name="Stations">Folds of the form, from its lead-in.</param>
internal sealed record PrintThroughStripInput(
    StripVerdict Verdict,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Facet = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Radius = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null,
    double? Lever = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] bool? FirstFacet = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Width = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<StandingStationInput>? Stations = null)
{
    /// <summary>JSON pointer within the strip of a field that it needs and lacks; null where none is missing.</summary>
    internal string? MissingField => this switch
    {
        { Stations: not null, Lever: null } => "/lever",
        { Stations: null, Facet: null } => "/facet",
        { Stations: null, Radius: null } => "/radius",
        _ => null,
    };

    /// <summary>The strip with every default shown.</summary>
    internal PrintThroughStripInput WithDefaults() => Stations is null ? this with { FirstFacet = FirstFacet ?? false } : this;

    /// <summary>The strip in the library's units.</summary>
    /// <param name="units">The caller's units.</param>
    /// <param name="thicknessMm">Thickness where it gives none [mm].</param>
    internal PrintStrip ToStrip(UnitSystem units, double thicknessMm)
    {
        var thickness = Thickness is { } own ? units.ToMm(own) : thicknessMm;
        var shows = Verdict == StripVerdict.Shows;
        var strip = Stations is { } stations
            ? PrintStrip.OverForm(StripForms.Of(stations, Lever!.Value, units), thickness, shows)
            : new(
                units.ToMm(Facet!.Value),
                units.ToMm(Radius!.Value),
                thickness,
                Lever is { } lever ? units.ToMm(lever) : null,
                FirstFacet!.Value,
                shows);
        return strip with { WidthMm = Width is { } width ? units.ToMm(width) : null };
    }
}

/// <summary>How a strip looks.</summary>
internal enum StripVerdict
{
    /// <summary>The facets do not show.</summary>
    Smooth,

    /// <summary>The facets show.</summary>
    Shows,
}

/// <summary>What strips judged by eye must satisfy.</summary>
internal sealed class PrintThroughStripsRequestRules : AbstractValidator<PrintThroughStripsRequest>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public PrintThroughStripsRequestRules(UnitSystem units)
    {
        this.AddSheetRules(units);
        this.AddStripRules(request => request.Strips, new PrintThroughStripInputRules(units), units);
    }
}

/// <summary>What a strip judged by eye must satisfy.</summary>
internal sealed class PrintThroughStripInputRules : AbstractValidator<PrintThroughStripInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public PrintThroughStripInputRules(UnitSystem units)
    {
        RuleFor(strip => strip.Facet).Within(Ranges.Facet, units);
        RuleFor(strip => strip.Radius).Within(Ranges.CurveRadius, units);
        RuleFor(strip => strip.Thickness).Within(Ranges.Thickness, units);
        RuleFor(strip => strip.Lever).Within(Ranges.StripLever, units);
        RuleFor(strip => strip.Width).Within(Ranges.StripWidth, units);
        this.AddStripForm(strip => strip.Stations, units);
        When(strip => strip.Stations is not null, () =>
        {
            NotOverStations(strip => strip.Facet);
            NotOverStations(strip => strip.Radius);
            NotOverStations(strip => strip.FirstFacet);
        });

        void NotOverStations<TField>(Expression<Func<PrintThroughStripInput, TField>> field) => RuleFor(field).Null()
            .Else("not-applicable", "It is not used when stations are given: they say it.", "leave it out, or leave out stations");
    }
}
