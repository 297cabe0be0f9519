using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FluentValidation;
using FluentValidation.Results;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>Strips measured flat, folded once and measured again.</summary>
/// <param name="Units">Unit of every length in the request and in the answer.</param>
/// <param name="Thickness">Thickness of the form's sheet [mm or in], and of every strip that gives none.</param>
/// <param name="Strips">The strips; one will do, two show how much they scatter.</param>
/// <param name="MeasuredTo">To where the legs are measured: <c>mold-line</c>, where the outside faces would meet if the fold were sharp, or
/// <c>tangent-line</c>, where the straight part ends. Default: <c>mold-line</c>.</param>
/// <param name="ReadingError">How far readings may be out. Default: 0.1 mm, 0.5° and 0.1 mm, assumptions.</param>
internal sealed record NeutralFactorStripsRequest(
    LengthUnit Units,
    double Thickness,
    IReadOnlyList<NeutralFactorStripInput> Strips,
    FlangeEnd? MeasuredTo = null,
    ReadingErrorInput? ReadingError = null) : IStripsRequest<NeutralFactorStripsRequest>
{
    private static readonly NeutralFactorStripsRequestRules InMm = new(UnitSystem.Mm);
    private static readonly NeutralFactorStripsRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<NeutralFactorStripsRequest> IRequestBody<NeutralFactorStripsRequest>.TypeInfo =>
        StripRequestJson.Strict.NeutralFactorStripsRequest;

    /// <inheritdoc/>
    bool IRequestBody<NeutralFactorStripsRequest>.HasNullItems => Strips.Contains(null);

    /// <inheritdoc/>
    string? IRequestBody<NeutralFactorStripsRequest>.MissingField => null;

    /// <inheritdoc/>
    ValidationResult IRequestBody<NeutralFactorStripsRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);

    /// <inheritdoc/>
    public NeutralFactorStripsRequest WithDefaults()
    {
        var units = UnitSystem.Of(Units);
        return this with
        {
            MeasuredTo = MeasuredTo ?? FlangeEnd.MoldLine,
            ReadingError = new(
                ReadingError?.Length ?? units.Length(0.1),
                ReadingError?.Angle ?? 0.5,
                ReadingError?.Radius ?? units.Length(0.1)),
        };
    }

    /// <summary>What the library is asked, once defaults are filled in.</summary>
    public NeutralQuestion ToQuestion()
    {
        var units = UnitSystem.Of(Units);
        return new()
        {
            ThicknessMm = units.ToMm(Thickness),
            Strips =
            [
                .. Strips.Select(strip => new NeutralStrip(
                    units.ToMm(strip.FlatLength),
                    units.ToMm(strip.FlangeA),
                    units.ToMm(strip.FlangeB),
                    Angle.FromDegrees(strip.Angle),
                    units.ToMm(strip.InsideRadius),
                    units.ToMm(strip.Thickness ?? Thickness))),
            ],
            MeasuredTo = MeasuredTo!.Value,
            LengthErrorMm = units.ToMm(ReadingError!.Length!.Value),
            AngleError = Angle.FromDegrees(ReadingError.Angle!.Value),
            RadiusErrorMm = units.ToMm(ReadingError.Radius!.Value),
        };
    }
}

/// <summary>A strip measured flat, folded once and measured again.</summary>
/// <param name="FlatLength">Length before folding [mm or in].</param>
/// <param name="FlangeA">One leg after folding [mm or in], to where <c>measuredTo</c> says.</param>
/// <param name="FlangeB">The other leg [mm or in].</param>
/// <param name="Angle">Fold angle, turned from flat [°].</param>
/// <param name="InsideRadius">Inside radius of the fold [mm or in].</param>
/// <param name="Thickness">Its thickness [mm or in]. Default: the request's.</param>
internal sealed record NeutralFactorStripInput(
    double FlatLength,
    double FlangeA,
    double FlangeB,
    double Angle,
    double InsideRadius,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null);

/// <summary>How far readings may be out: 95 % of them lie within.</summary>
/// <param name="Length">Of a length [mm or in]. Default: 0.1 mm.</param>
/// <param name="Angle">Of a fold angle [°]. Default: 0.5.</param>
/// <param name="Radius">Of an inside radius [mm or in]. Default: 0.1 mm.</param>
internal sealed record ReadingErrorInput(double? Length = null, double? Angle = null, double? Radius = null);

/// <summary>What strips measured flat and folded must satisfy.</summary>
internal sealed class NeutralFactorStripsRequestRules : AbstractValidator<NeutralFactorStripsRequest>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public NeutralFactorStripsRequestRules(UnitSystem units)
    {
        RuleFor(request => request.Thickness).Within(Ranges.Thickness, units);
        this.AddStripRules(request => request.Strips, new NeutralFactorStripInputRules(units), units);
        RuleFor(request => request.ReadingError!).SetValidator(new ReadingErrorInputRules(units))
            .When(request => request.ReadingError is not null);
    }
}

/// <summary>What a strip measured flat and folded must satisfy.</summary>
internal sealed class NeutralFactorStripInputRules : AbstractValidator<NeutralFactorStripInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public NeutralFactorStripInputRules(UnitSystem units)
    {
        RuleFor(strip => strip.FlatLength).Within(Ranges.FlatSegment, units);
        RuleFor(strip => strip.FlangeA).Within(Ranges.FlatSegment, units);
        RuleFor(strip => strip.FlangeB).Within(Ranges.FlatSegment, units);
        RuleFor(strip => strip.Angle).Within(Ranges.NeutralStripAngle, units);
        RuleFor(strip => strip.InsideRadius).Within(Ranges.FoldRadius, units);
        RuleFor(strip => strip.Thickness).Within(Ranges.Thickness, units);
    }
}

/// <summary>What reading errors must satisfy.</summary>
internal sealed class ReadingErrorInputRules : AbstractValidator<ReadingErrorInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ReadingErrorInputRules(UnitSystem units)
    {
        RuleFor(error => error.Length).Within(Ranges.LengthError, units);
        RuleFor(error => error.Angle).Within(Ranges.AngleError, units);
        RuleFor(error => error.Radius).Within(Ranges.LengthError, units);
    }
}
