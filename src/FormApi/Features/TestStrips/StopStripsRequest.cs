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

/// <summary>Strips folded against the stop: the stop angle and the angle measured.</summary>
/// <param name="Units">Units of the texts in the answer; every value here is an angle [°] in either system.</param>
/// <param name="Strips">The strips; one will do, two show the slope, three show how much they scatter.</param>
/// <param name="ReadingError">95 % of measured angles lie within this of the true one [°]. Default: 0.5, an assumption.</param>
/// <param name="AssumedSlope">Growth of the stop angle with the fold angle; only where all strips were folded at one stop, because then
/// they cannot show it. Default: 1 there, an assumption.</param>
/// <param name="SlopeError">How far the assumed slope may be out, at 95 %; only where all strips are at one stop. Default: 0.1 there, an
/// assumption.</param>
/// <param name="Targets">Fold angles a stop is wanted for [°]. Default: null, the smallest and the largest measured.</param>
/// <param name="StopResolution">Smallest step of the stop [°]. Default: null, settings are not rounded.</param>
internal sealed record StopStripsRequest(
    LengthUnit Units,
    IReadOnlyList<StopStripInput> Strips,
    double? ReadingError = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? AssumedSlope = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? SlopeError = null,
    IReadOnlyList<double>? Targets = null,
    double? StopResolution = null) : IStripsRequest<StopStripsRequest>
{
    private static readonly StopStripsRequestRules InMm = new(UnitSystem.Mm);
    private static readonly StopStripsRequestRules InInch = new(UnitSystem.Inch);

    /// <inheritdoc/>
    static JsonTypeInfo<StopStripsRequest> IRequestBody<StopStripsRequest>.TypeInfo => StripRequestJson.Strict.StopStripsRequest;

    /// <inheritdoc/>
    bool IRequestBody<StopStripsRequest>.HasNullItems => Strips.Contains(null);

    /// <inheritdoc/>
    string? IRequestBody<StopStripsRequest>.MissingField => null;

    /// <inheritdoc/>
    ValidationResult IRequestBody<StopStripsRequest>.Check() => (Units == LengthUnit.In ? InInch : InMm).Validate(this);

    /// <inheritdoc/>
    public StopStripsRequest WithDefaults()
    {
        var atOneStop = StopStrips.AtOneStop(ToStrips());
        return this with
        {
            ReadingError = ReadingError ?? 0.5,
            AssumedSlope = AssumedSlope ?? (atOneStop ? 1 : null),
            SlopeError = SlopeError ?? (atOneStop ? 0.1 : null),
        };
    }

    /// <summary>The strips in the library's units.</summary>
    public StopStrip[] ToStrips() =>
        [.. Strips.Select(strip => new StopStrip(Angle.FromDegrees(strip.StopAngle), Angle.FromDegrees(strip.Angle)))];

    /// <summary>What the library is asked, once defaults are filled in.</summary>
    public StopQuestion ToQuestion()
    {
        var question = new StopQuestion
        {
            Strips = ToStrips(),
            ReadingError = Angle.FromDegrees(ReadingError!.Value),
            Targets = [.. (Targets ?? []).Select(Angle.FromDegrees)],
            Resolution = StopResolution is { } step ? Angle.FromDegrees(step) : null,
        };
        return AssumedSlope is { } slope && SlopeError is { } error ? question with { AssumedSlope = slope, SlopeError = error } : question;
    }
}

/// <summary>A strip folded against the stop.</summary>
/// <param name="StopAngle">What the stop was set to: the angle under load [°], turned from flat.</param>
/// <param name="Angle">Measured after letting go [°], turned from flat.</param>
internal sealed record StopStripInput(double StopAngle, double Angle);

/// <summary>What strips folded against the stop must satisfy.</summary>
internal sealed class StopStripsRequestRules : AbstractValidator<StopStripsRequest>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public StopStripsRequestRules(UnitSystem units)
    {
        this.AddStripRules(request => request.Strips, new StopStripInputRules(units), units);
        RuleFor(request => request.ReadingError).Within(Ranges.AngleError, units);
        RuleFor(request => request.AssumedSlope).Within(Ranges.StopSlope, units);
        RuleFor(request => request.SlopeError).Within(Ranges.SlopeError, units);
        RuleFor(request => request.StopResolution).Within(Ranges.StopResolution, units);
        this.AddTargetRules(request => request.Targets, Ranges.StripAngle, units);
        When(request => !StopStrips.AtOneStop(request.ToStrips()), () =>
        {
            RuleFor(request => request.AssumedSlope).Null().Else("not-applicable", "These strips show the slope themselves.", "only where all strips were folded at one stop");
            RuleFor(request => request.SlopeError).Null().Else("not-applicable", "These strips show the slope themselves.", "only where all strips were folded at one stop");
        });
    }
}

/// <summary>What a strip folded against the stop must satisfy.</summary>
internal sealed class StopStripInputRules : AbstractValidator<StopStripInput>
{
    /// <summary>The rules.</summary>
    /// <param name="units">The caller's units.</param>
    public StopStripInputRules(UnitSystem units)
    {
        RuleFor(strip => strip.StopAngle).Within(Ranges.StripAngle, units);
        RuleFor(strip => strip.Angle).Within(Ranges.StripAngle, units);
    }
}
