using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>What strips taught about springback.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="EffectiveYield">Yield stress with which pure bending agrees with the strips [MPa or psi].</param>
/// <param name="YieldOverModulus">The same over Young's modulus.</param>
/// <param name="NominalYield">The material's own yield stress [MPa or psi].</param>
/// <param name="Margin">How far a single finished radius may be from the expected one [%].</param>
/// <param name="Effects">What the learnt yield does to the form of each wanted radius.</param>
/// <param name="Strips">The strips beside the learnt yield, in the order of the request.</param>
/// <param name="Outliers">Outliers; they are still counted.</param>
/// <param name="Doubts">Why the value should not be used before something is cleared up; empty where nothing is in the way.</param>
/// <param name="Paste">What to put into the next request, unchanged; null while there are doubts.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">The most useful next strip.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions for bending strips.</param>
/// <param name="Basis">What the results rest on.</param>
internal sealed record SpringbackStripsAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(SpringbackStripsRequest))] RawJson Request,
    IntervalResult EffectiveYield,
    IntervalResult YieldOverModulus,
    double NominalYield,
    MarginResult Margin,
    SpringbackEffectResult[] Effects,
    SpringbackStripResult[] Strips,
    OutlierResult[] Outliers,
    StripDoubtResult[] Doubts,
    SpringbackPaste? Paste,
    string Text,
    NextStripResult Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis)
{
    /// <summary>What strips taught about springback.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="asked">What was asked.</param>
    public static SpringbackStripsAnswer From(SpringbackLesson lesson, NormalizedRequest asked)
    {
        var units = asked.Units;
        return new(
            EngineVersion.Current,
            asked.Fingerprint,
            asked.Json,
            IntervalResult.From(lesson.YieldMpa, units.Stress),
            IntervalResult.From(lesson.YieldOverModulus, WireNumber.Of),
            units.Stress(lesson.NominalYieldMpa),
            MarginResult.From(lesson.Margin, StripFigures.Percent, lesson, units),
            [.. lesson.Effects.Select(effect => new SpringbackEffectResult(
                units.Length(effect.FinishedRadiusMm),
                units.Length(effect.FormRadiusBeforeMm),
                IntervalResult.From(effect.FormRadiusMm, units.Length),
                WireNumber.Of(effect.Factor)))],
            [.. lesson.Readings.Select(reading => new SpringbackStripResult(
                WireNumber.Of(reading.Factor),
                units.Stress(reading.EffectiveYieldMpa),
                units.Length(reading.ExpectedFinishedMm),
                units.Length(reading.NominalFinishedMm),
                StripFigures.Percent(reading.Miss)))],
            OutlierResult.AllOf(lesson, units),
            StripDoubtResult.AllOf(lesson, units),
            lesson.Doubts.Count > 0 ? null : new(new(new(units.Stress(lesson.YieldMpa.Value)))),
            units.Wording.Of(lesson.Changes),
            NextStripResult.From(lesson.Next, units),
            Lists.Map(lesson.Notes, note => ShopNoteResult.From(note, units)),
            Lists.Map(lesson.Safety, note => SafetyResult.From(note, units)),
            Lists.Map(lesson.Basis, BasisResult.From));
    }
}

/// <summary>What the learnt yield does to the form of a wanted radius.</summary>
/// <param name="FinishedRadius">The wanted finished inside radius [mm or in].</param>
/// <param name="FormRadiusBefore">Form radius by the material's own yield [mm or in].</param>
/// <param name="FormRadius">Form radius by the learnt yield [mm or in].</param>
/// <param name="Factor">Springback factor there, finished over formed curvature.</param>
internal sealed record SpringbackEffectResult(double FinishedRadius, double FormRadiusBefore, IntervalResult FormRadius, double Factor);

/// <summary>A strip beside the learnt yield.</summary>
/// <param name="Factor">Measured springback factor, finished over formed curvature of the mid surface.</param>
/// <param name="EffectiveYield">Yield stress with which this strip alone agrees [MPa or psi].</param>
/// <param name="Expected">Finished inside radius by the learnt yield [mm or in].</param>
/// <param name="Nominal">Finished inside radius by the material's own yield [mm or in]; null where the strip would have sprung
/// flat.</param>
/// <param name="Miss">Measured over expected finished radius of the mid surface, less one [%].</param>
internal sealed record SpringbackStripResult(double Factor, double EffectiveYield, double Expected, double? Nominal, double Miss);

/// <summary>What the springback's strips put into the next request.</summary>
/// <param name="Panel">The part of <c>panel</c>.</param>
internal sealed record SpringbackPaste(SpringbackPastePart Panel);

/// <summary>A part of <c>panel</c>.</summary>
/// <param name="Springback">How springback is found.</param>
internal sealed record SpringbackPastePart(EffectiveYieldPaste Springback);

/// <summary>Springback as measured.</summary>
/// <param name="EffectiveYield">The yield stress with which pure bending agrees [MPa or psi].</param>
internal sealed record EffectiveYieldPaste(double EffectiveYield);
