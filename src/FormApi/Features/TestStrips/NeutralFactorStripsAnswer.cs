using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using Forming.Plans.Notes;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>What strips taught about the neutral line of folds.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="NeutralFactor">Neutral factor K.</param>
/// <param name="Published">K by the published formula, the mean over the strips; null where it does not reach.</param>
/// <param name="Margin">How far a single strip may be from K, in units of its reading error.</param>
/// <param name="Strips">The strips, in the order of the request.</param>
/// <param name="Outliers">Outliers; they are still counted.</param>
/// <param name="Doubts">Why the value should not be used before something is cleared up; empty where nothing is in the way.</param>
/// <param name="Paste">What to put into the next request, unchanged; null while there are doubts.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">What to do next.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions for bending strips.</param>
/// <param name="Basis">What the results rest on.</param>
internal sealed record NeutralFactorStripsAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(NeutralFactorStripsRequest))] RawJson Request,
    IntervalResult NeutralFactor,
    double? Published,
    MarginResult Margin,
    NeutralFactorStripResult[] Strips,
    OutlierResult[] Outliers,
    StripDoubtResult[] Doubts,
    NeutralFactorPaste? Paste,
    string Text,
    NextStepResult[] Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis)
{
    /// <summary>What strips taught about the neutral line.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="asked">What was asked.</param>
    public static NeutralFactorStripsAnswer From(NeutralLesson lesson, NormalizedRequest asked) => new(
        EngineVersion.Current,
        asked.Fingerprint,
        asked.Json,
        IntervalResult.From(lesson.Factor, WireNumber.Of),
        StripFigures.NumberOf(lesson.Published),
        MarginResult.From(lesson.Margin, WireNumber.Of, lesson, asked.Units),
        [.. lesson.Readings.Select(reading => new NeutralFactorStripResult(
            asked.Units.Length(reading.AllowanceMm),
            WireNumber.Of(reading.Factor),
            WireNumber.Of(reading.FactorError),
            StripFigures.NumberOf(reading.Published)))],
        OutlierResult.AllOf(lesson, asked.Units),
        StripDoubtResult.AllOf(lesson, asked.Units),
        lesson.Doubts.Count > 0 ? null : new(new(WireNumber.Of(lesson.Factor.Value))),
        asked.Units.Wording.Of(lesson.Changes),
        StripSteps.Of(lesson, NextStepKind.FoldStrips, "/v1/test-strips/neutral-factor", asked.Units),
        Lists.Map(lesson.Notes, note => ShopNoteResult.From(note, asked.Units)),
        Lists.Map(lesson.Safety, note => SafetyResult.From(note, asked.Units)),
        Lists.Map(lesson.Basis, BasisResult.From));
}

/// <summary>What one strip alone shows of the neutral line.</summary>
/// <param name="BendAllowance">Length that the fold took of the flat [mm or in].</param>
/// <param name="NeutralFactor">Neutral factor K.</param>
/// <param name="ReadingError">How far K may be out by the reading errors, at 95 %.</param>
/// <param name="Published">K by the published formula for its radius and thickness; null where it does not reach.</param>
internal sealed record NeutralFactorStripResult(double BendAllowance, double NeutralFactor, double ReadingError, double? Published);

/// <summary>What the folded strips put into the next request.</summary>
/// <param name="Form">The part of <c>form</c>.</param>
internal sealed record NeutralFactorPaste(NeutralFactorPastePart Form);

/// <summary>A part of <c>form</c>.</summary>
/// <param name="NeutralFactor">Neutral factor K of the folds.</param>
internal sealed record NeutralFactorPastePart(double NeutralFactor);
