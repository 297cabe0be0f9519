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

/// <summary>Strips pulled round a form and let go: the radius of the form, and the radius that was left.</summary>
/// <param name="Units">Unit of every length in the request and in the answer: <c>mm</c> (with MPa) or <c>in</c> (with psi).</param>
/// <param name="Material">Material of the strips: elastic constants and hardening are taken from it, and the yield stress to compare
/// with.</param>
/// <param name="Strips">The strips; one will do, two show how much they scatter.</param>
/// <param name="Thickness">Thickness of the panel to come [mm or in], and of every strip that gives none; this or <c>gauge</c>.</param>
/// <param name="Gauge">Gauge number; this or <c>thickness</c>.</param>
/// <param name="GaugeSystem">The gauge's system, an id of <c>/v1/gauges</c>. Default: the material's own.</param>
/// <param name="ReadingError">95 % of measured finished radii lie within this share of the true one [%]. Default: 2, an assumption.</param>
/// <param name="Targets">Finished inside radii of the panel to come [mm or in]. Default: null, the middle one of the strips.</param>
internal sealed record SpringbackStripsRequest(
    LengthUnit Units,
    MaterialInput Material,
    IReadOnlyList<SpringbackStripInput> Strips,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Gauge = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? GaugeSystem = null,
    double? ReadingError = null,
    IReadOnlyList<double>? Targets = null) : IStripsRequest<SpringbackStripsRequest>, ISheetInput
{
    private static readonly SpringbackStripsRequestRules InMm = new(UnitSystem.Mm);
    private static readonly SpringbackStripsRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<SpringbackStripsRequest> IRequestBody<SpringbackStripsRequest>.TypeInfo =>
        StripRequestJson.Strict.SpringbackStripsRequest;

    /// <inheritdoc/>
    bool IRequestBody<SpringbackStripsRequest>.HasNullItems => Strips.Contains(null);

    /// <inheritdoc/>
    string? IRequestBody<SpringbackStripsRequest>.MissingField => null;

    /// <inheritdoc/>
    ValidationResult IRequestBody<SpringbackStripsRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);

    /// <inheritdoc/>
    public SpringbackStripsRequest WithDefaults() => this with
    {
        GaugeSystem = Gauge is null ? null : SheetRules.GaugeSystemOf(this),
        ReadingError = ReadingError ?? 2,
    };

    /// <summary>What the library is asked, once defaults are filled in.</summary>
    public SpringbackQuestion ToQuestion()
    {
        var units = UnitSystem.Of(Units);
        var sheet = FormSpecs.SheetFrom(this, units);
        return new()
        {
            Sheet = sheet,
            Strips =
            [
                .. Strips.Select(strip => new SpringbackStrip(
                    units.ToMm(strip.FormRadius),
                    units.ToMm(strip.FinishedRadius),
                    strip.Thickness is { } own ? units.ToMm(own) : sheet.ThicknessMm)),
            ],
            ReadingError = ReadingError!.Value / 100,
            TargetsMm = [.. (Targets ?? []).Select(units.ToMm)],
        };
    }
}

/// <summary>A strip pulled round a form and let go.</summary>
/// <param name="FormRadius">Radius of the form's outside, which the strip's inside face lay on [mm or in].</param>
/// <param name="FinishedRadius">Radius of the strip's inside face after letting go [mm or in]; above the form's.</param>
/// <param name="Thickness">Its thickness [mm or in]. Default: the request's.</param>
internal sealed record SpringbackStripInput(
    double FormRadius,
    double FinishedRadius,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null);

/// <summary>What strips pulled round a form must satisfy.</summary>
internal sealed class SpringbackStripsRequestRules : AbstractValidator<SpringbackStripsRequest>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SpringbackStripsRequestRules(UnitSystem units)
    {
        this.AddSheetRules(units);
        this.AddStripRules(request => request.Strips, new SpringbackStripInputRules(units), units);
        RuleFor(request => request.ReadingError).Within(Ranges.RadiusErrorPercent, units);
        this.AddTargetRules(request => request.Targets, Ranges.CurveRadius, units);
    }
}

/// <summary>What a strip pulled round a form must satisfy.</summary>
internal sealed class SpringbackStripInputRules : AbstractValidator<SpringbackStripInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SpringbackStripInputRules(UnitSystem units)
    {
        RuleFor(strip => strip.FormRadius).Within(Ranges.CurveRadius, units);
        RuleFor(strip => strip.FinishedRadius).Within(Ranges.CurveRadius, units);
        RuleFor(strip => strip.Thickness).Within(Ranges.Thickness, units);
        RuleFor(strip => strip.FinishedRadius).Must((strip, finished) => !(finished <= strip.FormRadius))
            .Else("springs-inwards", "The strip is not wider than its form: a sheet springs open, never closed.", "above formRadius");
    }
}
