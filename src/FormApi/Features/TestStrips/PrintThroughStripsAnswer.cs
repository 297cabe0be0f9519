using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming.Plans.Notes;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>What strips taught about the ripple that may show.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="Bracket">Between which ripples the limit lies.</param>
/// <param name="AllowedRipple">The careful end of it: the largest ripple judged smooth below every one judged to show [mm or in]; null
/// where there is none.</param>
/// <param name="SlopeThere">Slope of the strip that set it [°]; null where none did.</param>
/// <param name="Strips">The strips, in the order of the request.</param>
/// <param name="Contradictions">Verdicts that go against each other, pair by pair.</param>
/// <param name="Paste">What to put into the next request, unchanged; null where no strip was smooth below one that shows.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">What to do next.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions for bending strips.</param>
/// <param name="Basis">What the results rest on.</param>
internal sealed record PrintThroughStripsAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(PrintThroughStripsRequest))] RawJson Request,
    BracketResult Bracket,
    double? AllowedRipple,
    double? SlopeThere,
    PrintThroughStripResult[] Strips,
    ContradictionResult[] Contradictions,
    PrintThroughPaste? Paste,
    string Text,
    NextStepResult[] Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis)
{
    /// <summary>What strips taught about the ripple that may show.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="asked">What was asked.</param>
    public static PrintThroughStripsAnswer From(PrintLesson lesson, NormalizedRequest asked)
    {
        var units = asked.Units;
        return new(
            EngineVersion.Current,
            asked.Fingerprint,
            asked.Json,
            new(units.Length(lesson.LargestSmoothMm), units.Length(lesson.SmallestShowingMm)),
            units.Length(lesson.AllowedRippleMm),
            UnitSystem.Degrees(lesson.SlopeThere),
            [.. lesson.Readings.Select(reading => new PrintThroughStripResult(
                reading.RippleMm is not null,
                units.Wording.OfOptional(reading.WhyUnusable),
                units.Length(reading.LeverMm),
                units.Length(reading.RippleMm),
                UnitSystem.Degrees(reading.Slope),
                reading.IsSimulated))],
            [.. lesson.Contradictions.Select(pair => new ContradictionResult(
                StripFigures.PointerOf(pair.Smooth), StripFigures.PointerOf(pair.Showing), units.Wording.Of(pair.Text)))],
            lesson.AllowedRippleMm is { } ripple ? new(new(units.Length(ripple))) : null,
            units.Wording.Of(lesson.Changes),
            StripSteps.Of(lesson, NextStepKind.BendStrip, "/v1/test-strips/print-through", units),
            Lists.Map(lesson.Notes, note => ShopNoteResult.From(note, units)),
            Lists.Map(lesson.Safety, note => SafetyResult.From(note, units)),
            Lists.Map(lesson.Basis, BasisResult.From));
    }
}

/// <summary>Between which ripples the limit lies.</summary>
/// <param name="LargestSmooth">Largest ripple judged smooth [mm or in]; null where no strip was smooth.</param>
/// <param name="SmallestShowing">Smallest ripple judged to show [mm or in]; null where none shows.</param>
internal sealed record BracketResult(double? LargestSmooth, double? SmallestShowing);

/// <summary>The ripple that a strip must have had; from a wrap model not yet checked against measured panels.</summary>
/// <param name="Usable">Whether the strip shows anything of the limit.</param>
/// <param name="Text">Why it does not, or null.</param>
/// <param name="Lever">Lever it was calculated with [mm or in].</param>
/// <param name="Ripple">Peak-to-valley height [mm or in]; null where the strip shows nothing.</param>
/// <param name="Slope">Slope against the smooth curve [°]; null where the strip shows nothing.</param>
/// <param name="Simulated">False by the closed form.</param>
internal sealed record PrintThroughStripResult(bool Usable, string? Text, double Lever, double? Ripple, double? Slope, bool Simulated);

/// <summary>A strip judged smooth though another with no more ripple shows.</summary>
/// <param name="Smooth">JSON pointer of the smooth one in the request.</param>
/// <param name="Showing">JSON pointer of the one that shows.</param>
/// <param name="Text">Both ripples, and what to do.</param>
internal sealed record ContradictionResult(string Smooth, string Showing, string Text);

/// <summary>What the judged strips put into the next request.</summary>
/// <param name="Panel">The part of <c>panel</c>.</param>
internal sealed record PrintThroughPaste(PrintThroughPastePart Panel);

/// <summary>A part of <c>panel</c>.</summary>
/// <param name="AllowedRipple">Largest peak-to-valley height that may show [mm or in].</param>
internal sealed record PrintThroughPastePart(double AllowedRipple);
