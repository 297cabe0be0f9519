using System.Globalization;
using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>From what strips taught to the answer, in the caller's units.</summary>
internal static class StripAnswers
{
    /// <summary>What strips taught about the stop.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="asked">What was asked.</param>
    public static StopStripsAnswer From(StopLesson lesson, NormalizedRequest asked) => new(
        EngineVersion.Current,
        asked.Fingerprint,
        asked.Json,
        new(Of(lesson.Offset, Degrees), Of(lesson.Slope, WireNumber.Of), lesson.Fit.IsSlopeAssumed),
        MarginOf(lesson.Fit.Margin, Degrees, lesson, asked.Units),
        [.. lesson.Settings.Select(stop => new StopAdviceResult(
            UnitSystem.Degrees(stop.FoldAngle), Of(stop.StopAngle, Degrees), UnitSystem.Degrees(stop.Set), Of(stop.Expected, Degrees)))],
        [.. lesson.Fit.Expected.Select((expected, i) => new StopStripResult(
            Degrees(expected), Degrees(lesson.Fit.Residuals[i]), WireNumber.Of(lesson.Fit.Leverages[i])))],
        OutliersOf(lesson, asked.Units),
        new(new(new(UnitSystem.Degrees(lesson.Line.Offset), WireNumber.Of(lesson.Line.Slope)))),
        asked.Units.Wording.Of(lesson.Changes),
        NextOf(lesson.Next, asked.Units),
        NotesOf(lesson, asked.Units),
        SafetyOf(lesson, asked.Units),
        BasisOf(lesson));

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
            Of(lesson.YieldMpa, units.Stress),
            Of(lesson.YieldOverModulus, WireNumber.Of),
            units.Stress(lesson.NominalYieldMpa),
            MarginOf(lesson.Margin, Percent, lesson, units),
            [.. lesson.Effects.Select(effect => new SpringbackEffectResult(
                units.Length(effect.FinishedRadiusMm),
                units.Length(effect.FormRadiusBeforeMm),
                Of(effect.FormRadiusMm, units.Length),
                WireNumber.Of(effect.Factor)))],
            [.. lesson.Readings.Select(reading => new SpringbackStripResult(
                WireNumber.Of(reading.Factor),
                units.Stress(reading.EffectiveYieldMpa),
                units.Length(reading.ExpectedFinishedMm),
                units.Length(reading.NominalFinishedMm),
                Percent(reading.Miss)))],
            OutliersOf(lesson, units),
            DoubtsOf(lesson, units),
            lesson.Doubts.Count > 0 ? null : new(new(new(units.Stress(lesson.YieldMpa.Value)))),
            units.Wording.Of(lesson.Changes),
            NextOf(lesson.Next, units),
            NotesOf(lesson, units),
            SafetyOf(lesson, units),
            BasisOf(lesson));
    }

    /// <summary>What strips taught about the neutral line.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="asked">What was asked.</param>
    public static NeutralFactorStripsAnswer From(NeutralLesson lesson, NormalizedRequest asked) => new(
        EngineVersion.Current,
        asked.Fingerprint,
        asked.Json,
        Of(lesson.Factor, WireNumber.Of),
        NumberOf(lesson.Published),
        MarginOf(lesson.Margin, WireNumber.Of, lesson, asked.Units),
        [.. lesson.Readings.Select(reading => new NeutralFactorStripResult(
            asked.Units.Length(reading.AllowanceMm),
            WireNumber.Of(reading.Factor),
            WireNumber.Of(reading.FactorError),
            NumberOf(reading.Published)))],
        OutliersOf(lesson, asked.Units),
        DoubtsOf(lesson, asked.Units),
        lesson.Doubts.Count > 0 ? null : new(new(WireNumber.Of(lesson.Factor.Value))),
        asked.Units.Wording.Of(lesson.Changes),
        NextOf(lesson.Next, asked.Units),
        NotesOf(lesson, asked.Units),
        SafetyOf(lesson, asked.Units),
        BasisOf(lesson));

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
                UnitSystem.Degrees(reading.Slope)))],
            [.. lesson.Contradictions.Select(pair => new ContradictionResult(
                PointerOf(pair.Smooth), PointerOf(pair.Showing), units.Wording.Of(pair.Text)))],
            lesson.AllowedRippleMm is { } ripple ? new(new(units.Length(ripple))) : null,
            units.Wording.Of(lesson.Changes),
            NextOf(lesson.Next, units),
            NotesOf(lesson, units),
            SafetyOf(lesson, units),
            BasisOf(lesson));
    }

    private static double Degrees(double radians) => UnitSystem.Degrees(new Angle(radians));

    private static double Percent(double share) => WireNumber.Of(100 * share);

    private static double? NumberOf(double? value) => value is { } known ? WireNumber.Of(known) : null;

    private static IntervalResult Of(Interval interval, Func<double, double> convert) => new(
        convert(interval.Value),
        interval.Low is { } low ? convert(low) : null,
        interval.High is { } high ? convert(high) : null,
        Margin.Confidence);

    private static MarginResult MarginOf(Margin margin, Func<double, double> convert, StripLesson lesson, UnitSystem units) => new(
        convert(margin.Half),
        margin.Scatter is { } scatter ? convert(scatter) : null,
        margin.DegreesOfFreedom,
        margin.IsReadingError,
        units.Wording.Of(lesson.MarginText!));

    private static StripDoubtResult[] DoubtsOf(StripLesson lesson, UnitSystem units) =>
        [.. lesson.Doubts.Select(doubt => new StripDoubtResult(doubt.Id, [.. doubt.Strips.Select(PointerOf)], units.Wording.Of(doubt.Text)))];

    private static string PointerOf(int strip) => "/strips/" + strip.ToString(CultureInfo.InvariantCulture);

    private static OutlierResult[] OutliersOf(StripLesson lesson, UnitSystem units) =>
        [.. lesson.Outliers.Select(outlier => new OutlierResult(PointerOf(outlier.Index), units.Wording.Of(outlier.Text)))];

    private static NextStripResult NextOf(NextStrip next, UnitSystem units) => new(
        units.Wording.Of(next.Text),
        UnitSystem.Degrees(next.StopAngle),
        UnitSystem.Degrees(next.FoldAngle),
        units.Length(next.FacetMm),
        units.Length(next.FormRadiusMm),
        units.Length(next.ThicknessMm),
        units.Length(next.LeverMm));

    private static ShopNoteResult[] NotesOf(StripLesson lesson, UnitSystem units) =>
        [.. lesson.Notes.Select(note => new ShopNoteResult(note.Id, units.Wording.Of(note.Text)))];

    private static SafetyResult[] SafetyOf(StripLesson lesson, UnitSystem units) =>
        [.. lesson.Safety.Select(note => new SafetyResult(note.Id, note.Level, units.Wording.Of(note.Text)))];

    private static BasisResult[] BasisOf(StripLesson lesson) =>
        [.. lesson.Basis.Select(basis => new BasisResult(basis.Quantity, basis.Method, basis.Source, basis.Status))];
}
