using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming.Plans.Notes;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>What strips taught about the stop.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer: the same request on the same engine gives the same bytes.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="Line">The line: stop angle = offset + slope × fold angle.</param>
/// <param name="Margin">How far a single measured angle may be from the line [°].</param>
/// <param name="Settings">The stop to set for each wanted fold angle.</param>
/// <param name="Strips">The strips beside the line, in the order of the request.</param>
/// <param name="Outliers">Outliers; they are still counted.</param>
/// <param name="Paste">What to put into the next request, unchanged.</param>
/// <param name="Text">What it changes.</param>
/// <param name="Next">What to do next.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions for bending strips.</param>
/// <param name="Basis">What the results rest on.</param>
internal sealed record StopStripsAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(StopStripsRequest))] RawJson Request,
    StopLineResult Line,
    MarginResult Margin,
    StopAdviceResult[] Settings,
    StopStripResult[] Strips,
    OutlierResult[] Outliers,
    StopPaste Paste,
    string Text,
    NextStepResult[] Next,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis)
{
    /// <summary>What strips taught about the stop.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="asked">What was asked.</param>
    public static StopStripsAnswer From(StopLesson lesson, NormalizedRequest asked) => new(
        EngineVersion.Current,
        asked.Fingerprint,
        asked.Json,
        new(
            IntervalResult.From(lesson.Offset, StripFigures.Degrees),
            IntervalResult.From(lesson.Slope, WireNumber.Of),
            lesson.Fit.IsSlopeAssumed),
        MarginResult.From(lesson.Fit.Margin, StripFigures.Degrees, lesson, asked.Units),
        [.. lesson.Settings.Select(stop => new StopAdviceResult(
            UnitSystem.Degrees(stop.FoldAngle),
            IntervalResult.From(stop.StopAngle, StripFigures.Degrees),
            UnitSystem.Degrees(stop.Set),
            IntervalResult.From(stop.Expected, StripFigures.Degrees)))],
        [.. lesson.Fit.Expected.Select((expected, i) => new StopStripResult(
            StripFigures.Degrees(expected), StripFigures.Degrees(lesson.Fit.Residuals[i]), WireNumber.Of(lesson.Fit.Leverages[i])))],
        OutlierResult.AllOf(lesson, asked.Units),
        new(new(new(UnitSystem.Degrees(lesson.Line.Offset), WireNumber.Of(lesson.Line.Slope)))),
        asked.Units.Wording.Of(lesson.Changes),
        StripSteps.Of(lesson, NextStepKind.FoldStrips, "/v1/test-strips/stop", asked.Units),
        Lists.Map(lesson.Notes, note => ShopNoteResult.From(note, asked.Units)),
        Lists.Map(lesson.Safety, note => SafetyResult.From(note, asked.Units)),
        Lists.Map(lesson.Basis, BasisResult.From));
}

/// <summary>The line of the stop.</summary>
/// <param name="Offset">Stop angle at a fold of zero [°].</param>
/// <param name="Slope">Growth of the stop angle with the fold angle.</param>
/// <param name="SlopeAssumed">Whether the slope was assumed, because all strips were folded at one stop.</param>
internal sealed record StopLineResult(IntervalResult Offset, IntervalResult Slope, bool SlopeAssumed);

/// <summary>The stop to set for a wanted fold angle.</summary>
/// <param name="Angle">The wanted fold angle [°].</param>
/// <param name="StopAngle">The stop angle for it [°].</param>
/// <param name="Set">The same on the stop's own steps [°].</param>
/// <param name="Expected">Angle that the next strip at that setting may have [°].</param>
internal sealed record StopAdviceResult(double Angle, IntervalResult StopAngle, double Set, IntervalResult Expected);

/// <summary>A strip beside the line.</summary>
/// <param name="Expected">Fold angle by the line [°].</param>
/// <param name="Miss">Measured less expected [°].</param>
/// <param name="Leverage">How far it pulls the line to itself, 0 to 1.</param>
internal sealed record StopStripResult(double Expected, double Miss, double Leverage);

/// <summary>What the stop's strips put into the next request.</summary>
/// <param name="Form">The part of <c>form</c>.</param>
internal sealed record StopPaste(StopPastePart Form);

/// <summary>A part of <c>form</c>.</summary>
/// <param name="Stop">The line of the stop.</param>
internal sealed record StopPastePart(StopInput Stop);
