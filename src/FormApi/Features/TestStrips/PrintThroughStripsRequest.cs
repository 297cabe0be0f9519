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
    bool IRequestBody<PrintThroughStripsRequest>.HasNullItems => Strips.Contains(null);

    /// <inheritdoc/>
    string? IRequestBody<PrintThroughStripsRequest>.MissingField => null;

    /// <inheritdoc/>
    ValidationResult IRequestBody<PrintThroughStripsRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);

    /// <inheritdoc/>
    public PrintThroughStripsRequest WithDefaults() => this with
    {
        GaugeSystem = Gauge is null ? null : SheetRules.GaugeSystemOf(this),
        Strips = [.. Strips.Select(strip => strip with { FirstFacet = strip.FirstFacet ?? false })],
    };

    /// <summary>What the library is asked, once defaults are filled in.</summary>
    public PrintQuestion ToQuestion()
    {
        var units = UnitSystem.Of(Units);
        var sheet = FormSpecs.SheetFrom(this, units);
        return new(
            sheet.Material,
            [
                .. Strips.Select(strip => new PrintStrip(
                    units.ToMm(strip.Facet),
                    units.ToMm(strip.Radius),
                    strip.Thickness is { } own ? units.ToMm(own) : sheet.ThicknessMm,
                    strip.Lever is { } lever ? units.ToMm(lever) : null,
                    strip.FirstFacet!.Value,
                    strip.Verdict == StripVerdict.Shows)),
            ]);
    }
}

/// <summary>A strip pulled over facets and judged by eye.</summary>
/// <param name="Facet">Facet of the form on its contact side [mm or in].</param>
/// <param name="Radius">Radius of the form's contact curve [mm or in].</param>
/// <param name="Verdict">Whether the facets show: <c>smooth</c> or <c>shows</c>.</param>
/// <param name="Thickness">Its thickness [mm or in]. Default: the request's.</param>
/// <param name="Lever">From the fold that the strip touches at the facet looked at to the hand that pulls [mm or in]. Default: null, the
/// longest that keeps the wrap in order, at most 250 mm.</param>
/// <param name="FirstFacet">Whether the facet looked at is the first after the lead-in, with a half fold before it: it shows 1.8 times as
/// much. Default: false.</param>
internal sealed record PrintThroughStripInput(
    double Facet,
    double Radius,
    StripVerdict Verdict,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null,
    double? Lever = null,
    bool? FirstFacet = null);

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
    }
}
