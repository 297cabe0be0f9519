using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming.Plans.Notes;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>What strips taught about springback.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="EffectiveYield">Yield stress to plan with [MPa or psi]: the grade's scatter joined with the strips.</param>
/// <param name="YieldOverModulus">The same over Young's modulus.</param>
/// <param name="NominalYield">The material's own yield stress [MPa or psi].</param>
/// <param name="ReadingsAlone">By the strips alone [MPa or psi].</param>
/// <param name="GradeWeight">The grade's weight in it, 0 to 1.</param>
/// <param name="Sheet">What springback leaves open.</param>
/// <param name="Needed">How many more strips to take.</param>
/// <param name="Margin">How far a single finished radius may be from the expected one [%].</param>
/// <param name="Effects">What the learnt yield does to the form of each wanted radius.</param>
/// <param name="Strips">The strips beside the learnt yield, in the order of the request.</param>
/// <param name="Outliers">Outliers; they are still counted.</param>
/// <param name="Doubts">Why the value should not be used before something is cleared up; empty where nothing is in the way.</param>
/// <param name="Paste">What to put into the next request, unchanged; null while there are doubts.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">What to do next.</param>
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
    IntervalResult ReadingsAlone,
    double GradeWeight,
    SheetBandsResult Sheet,
    StripsNeededResult Needed,
    MarginResult Margin,
    SpringbackEffectResult[] Effects,
    SpringbackStripResult[] Strips,
    OutlierResult[] Outliers,
    StripDoubtResult[] Doubts,
    SpringbackPaste? Paste,
    string Text,
    NextStepResult[] Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis)
{
    /// <summary>What strips taught about springback.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="readingError">95 % of radii are read within this share.</param>
    /// <param name="asked">What was asked.</param>
    public static SpringbackStripsAnswer From(SpringbackLesson lesson, double readingError, NormalizedRequest asked)
    {
        var units = asked.Units;
        return new(
            EngineVersion.Current,
            asked.Fingerprint,
            asked.Json,
            IntervalResult.From(lesson.YieldMpa, units.Stress),
            IntervalResult.From(lesson.YieldOverModulus, WireNumber.Of),
            units.Stress(lesson.NominalYieldMpa),
            IntervalResult.From(lesson.AloneMpa, units.Stress),
            WireNumber.Of(lesson.PriorWeight),
            new(IntervalResult.From(lesson.Sheet.YieldMpa, units.Stress), IntervalResult.From(lesson.Sheet.ThicknessMm, units.Length)),
            new(
                units.Length(lesson.Needed.NowMm),
                lesson.Needed.Strips,
                units.Length(lesson.Needed.OtherSheetsMm),
                units.Wording.Of(lesson.Needed.Text)),
            MarginResult.From(lesson.Margin, half => StripFigures.Percent(half * readingError), lesson, units),
            [.. lesson.Effects.Select(effect => new SpringbackEffectResult(
                units.Length(effect.FinishedRadiusMm),
                units.Length(effect.FormRadiusBeforeMm),
                IntervalResult.From(effect.FormRadiusMm, units.Length),
                WireNumber.Of(effect.Factor)))],
            [.. lesson.Readings.Select(reading => new SpringbackStripResult(
                StripFigures.NumberOf(reading?.Factor),
                reading is null ? null : units.Stress(reading.EffectiveYieldMpa),
                units.Length(reading?.ExpectedFinishedMm),
                units.Length(reading?.NominalFinishedMm),
                UnitSystem.Degrees(reading?.ExpectedSweep),
                StripFigures.NumberOf(100 * reading?.Miss)))],
            OutlierResult.AllOf(lesson, units),
            StripDoubtResult.AllOf(lesson, units),
            lesson.Doubts.Count > 0 ? null : new(new(new(units.Stress(lesson.YieldMpa.Value)))),
            units.Wording.Of(lesson.Changes),
            StripSteps.Of(lesson, NextStepKind.BendStrip, "/v1/test-strips/springback", units),
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

/// <summary>A strip beside the learnt yield; nulls where its pull cannot be followed.</summary>
/// <param name="Factor">Measured springback factor: finished over formed curvature of the mid surface, or sweep.</param>
/// <param name="EffectiveYield">Yield stress with which this strip alone agrees [MPa or psi].</param>
/// <param name="Expected">Finished inside radius by the learnt yield [mm or in]; null where the strip would spring flat.</param>
/// <param name="Nominal">Finished inside radius by the material's own yield [mm or in]; null where the strip would have sprung
/// flat.</param>
/// <param name="ExpectedSweep">Finished sweep by the learnt yield [°]; null round a bar.</param>
/// <param name="Miss">Measured over expected finished radius of the mid surface, or sweep, less one [%].</param>
internal sealed record SpringbackStripResult(
    double? Factor, double? EffectiveYield, double? Expected, double? Nominal, double? ExpectedSweep, double? Miss);

/// <summary>A strong sheet springs back like a thin one.</summary>
/// <param name="Yield">Yield stress [MPa or psi].</param>
/// <param name="Thickness">Thickness [mm or in].</param>
internal sealed record SheetBandsResult(IntervalResult Yield, IntervalResult Thickness);

/// <summary>How many more strips it takes.</summary>
/// <param name="Now">How far the first target may be off by these strips, 95 times of 100 [mm or in].</param>
/// <param name="Strips">More strips; null where a hundred do not do.</param>
/// <param name="OtherSheets">The same by another sheet's thickness [mm or in].</param>
/// <param name="Text">In words.</param>
internal sealed record StripsNeededResult(double Now, int? Strips, double OtherSheets, string Text);

/// <summary>What the springback's strips put into the next request.</summary>
/// <param name="Panel">The part of <c>panel</c>.</param>
internal sealed record SpringbackPaste(SpringbackPastePart Panel);

/// <summary>A part of <c>panel</c>.</summary>
/// <param name="Springback">How springback is found.</param>
internal sealed record SpringbackPastePart(EffectiveYieldPaste Springback);

/// <summary>Springback as measured.</summary>
/// <param name="EffectiveYield">The learnt yield stress [MPa or psi].</param>
internal sealed record EffectiveYieldPaste(double EffectiveYield);
