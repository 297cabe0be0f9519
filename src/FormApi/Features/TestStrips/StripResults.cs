using System.Globalization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming;
using Forming.Learning;
using Forming.TestStrips;

namespace FormApi.Features.TestStrips;

/// <summary>A value learnt from strips, and how far they leave it open.</summary>
/// <param name="Value">The best value.</param>
/// <param name="Low">Lower end; null where the strips set none.</param>
/// <param name="High">Upper end; null where the strips set none.</param>
/// <param name="Confidence">How often such an interval contains the true value.</param>
internal sealed record IntervalResult(double Value, double? Low, double? High, double Confidence)
{
    /// <summary>The figure in a caller's units.</summary>
    /// <param name="interval">The figure.</param>
    /// <param name="convert">Into those units.</param>
    public static IntervalResult From(Interval interval, Func<double, double> convert) => new(
        convert(interval.Value),
        interval.Low is { } low ? convert(low) : null,
        interval.High is { } high ? convert(high) : null,
        Margin.Confidence);
}

/// <summary>How far a single reading may be from the fit, 19 times of 20.</summary>
/// <param name="Half">The half-width: scatter times Student's t, never below the reading error.</param>
/// <param name="Scatter">Standard deviation of the strips about the fit; null where no strip is left over.</param>
/// <param name="DegreesOfFreedom">Strips less fitted values.</param>
/// <param name="ByReadingError">Whether the half-width is the reading error and not the strips' scatter.</param>
/// <param name="Text">What the half-width rests on, in words.</param>
internal sealed record MarginResult(double Half, double? Scatter, int DegreesOfFreedom, bool ByReadingError, string Text)
{
    /// <summary>The margin in a caller's units.</summary>
    /// <param name="margin">The margin.</param>
    /// <param name="convert">Into those units.</param>
    /// <param name="lesson">What was learnt.</param>
    /// <param name="units">The caller's units.</param>
    public static MarginResult From(Margin margin, Func<double, double> convert, StripLesson lesson, UnitSystem units) => new(
        convert(margin.Half),
        margin.Scatter is { } scatter ? convert(scatter) : null,
        margin.DegreesOfFreedom,
        margin.IsReadingError,
        units.Wording.Of(lesson.MarginText!));
}

/// <summary>A reason not to use what strips taught before it is cleared up.</summary>
/// <param name="Id">Stable id such as <c>yield-implausible</c>.</param>
/// <param name="Pointers">JSON pointers of the strips in question; empty where it is all of them.</param>
/// <param name="Text">What is doubtful, and what to look for.</param>
internal sealed record StripDoubtResult(string Id, string[] Pointers, string Text)
{
    /// <summary>All of a lesson's doubts.</summary>
    /// <param name="lesson">What was learnt.</param>
    /// <param name="units">The caller's units.</param>
    public static StripDoubtResult[] AllOf(StripLesson lesson, UnitSystem units) =>
        [.. lesson.Doubts.Select(doubt =>
            new StripDoubtResult(doubt.Id, [.. doubt.Strips.Select(StripFigures.PointerOf)], units.Wording.Of(doubt.Text)))];
}

/// <summary>An outlier.</summary>
/// <param name="Pointer">JSON pointer of the strip in the request.</param>
/// <param name="Text">How far it is out, and what leaving it out would do.</param>
internal sealed record OutlierResult(string Pointer, string Text)
{
    /// <summary>All of a lesson's outliers.</summary>
    /// <param name="lesson">What was learnt.</param>
    /// <param name="units">The caller's units.</param>
    public static OutlierResult[] AllOf(StripLesson lesson, UnitSystem units) =>
        [.. lesson.Outliers.Select(outlier => new OutlierResult(StripFigures.PointerOf(outlier.Index), units.Wording.Of(outlier.Text)))];
}

/// <summary>How figures of strips go into an answer.</summary>
internal static class StripFigures
{
    /// <summary>An angle in degrees.</summary>
    /// <param name="radians">The angle [rad].</param>
    public static double Degrees(double radians) => UnitSystem.Degrees(new Angle(radians));

    /// <summary>A share in hundredths.</summary>
    /// <param name="share">The share.</param>
    public static double Percent(double share) => WireNumber.Of(100 * share);

    /// <summary>A number, if there is one.</summary>
    /// <param name="value">The number.</param>
    public static double? NumberOf(double? value) => value is { } known ? WireNumber.Of(known) : null;

    /// <summary>Pointer of the first field that a strip needs and lacks, or null.</summary>
    /// <typeparam name="TStrip">A strip.</typeparam>
    /// <param name="strips">The strips.</param>
    /// <param name="missing">Pointer within a strip, or null.</param>
    public static string? FirstMissing<TStrip>(IReadOnlyList<TStrip> strips, Func<TStrip, string?> missing) => strips
        .Select((strip, i) => missing(strip) is { } place ? PointerOf(i) + place : null)
        .FirstOrDefault(pointer => pointer is not null);

    /// <summary>Where a strip is in the request (RFC 6901).</summary>
    /// <param name="strip">Index of the strip.</param>
    public static string PointerOf(int strip) => "/strips/" + strip.ToString(CultureInfo.InvariantCulture);
}
