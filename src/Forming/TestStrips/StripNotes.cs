using Forming.Plans.Notes;
using Forming.Results;

namespace Forming.TestStrips;

/// <summary>Notes and grounds that all strips share.</summary>
internal static class StripNotes
{
    /// <summary>What to do with what strips taught.</summary>
    public static readonly FormattableString Planning = $"Put paste into the form's request, and plan again.";

    /// <summary>Says where the width of the intervals comes from, unless it is the scatter of the strips.</summary>
    /// <param name="notes">The notes.</param>
    /// <param name="margin">The margin.</param>
    /// <param name="readingError">The reading error, as it is shown.</param>
    /// <param name="unit">What follows it, such as <c> %</c>.</param>
    public static void AddMargin(List<ShopNote> notes, Margin margin, Figure readingError, string unit = "")
    {
        if (margin.DegreesOfFreedom == 0)
        {
            notes.Add(new(
                "no-scatter",
                $"No strip is left over to show how much they scatter: the width is set by a reading error of {readingError}{unit} alone. One more strip tests it."));
        }
        else if (margin.IsReadingError)
        {
            notes.Add(new(
                "closer-than-readable",
                $"The strips agree better than they can be read: the width rests on the reading error of {readingError}{unit}."));
        }
    }

    /// <summary>Says in one sentence what the width of the intervals rests on.</summary>
    /// <param name="margin">The margin.</param>
    /// <param name="strips">Number of strips.</param>
    /// <param name="readingError">The reading error, as it is shown.</param>
    /// <param name="unit">What follows it, such as <c> %</c>.</param>
    /// <param name="plural">What there are several of.</param>
    public static FormattableString MarginText(
        Margin margin, int strips, Figure readingError, string unit = "", string plural = "strips") => (margin, strips) switch
        {
            ({ DegreesOfFreedom: 0 }, 1) => $"One strip: the interval rests on the reading error of {readingError}{unit} alone.",
            ({ DegreesOfFreedom: 0 }, _) => $"{strips} {plural}: the interval rests on the reading error of {readingError}{unit} alone.",
            ({ IsReadingError: true }, _) => $"{strips} {plural} that agree better than they can be read: the interval rests on the reading error of {readingError}{unit} alone.",
            ({ DegreesOfFreedom: 1 }, _) => $"{strips} {plural} show their scatter only roughly, so the interval is wide; one more strip narrows it.",
            _ => $"The interval rests on the scatter of {strips} {plural}, times Student's t.",
        };

    /// <summary>What the width of the intervals rests on.</summary>
    /// <param name="quantity">Name of the value in the answer.</param>
    /// <param name="margin">The margin.</param>
    public static Basis MarginBasis(string quantity, Margin margin) => margin.IsReadingError
        ? new(quantity, "the reading error: 95 % of readings lie within it; nothing narrower is shown", "request, or the default where it gave none", Status.Assumption)
        : new(quantity, "scatter of the strips times Student's t, never below the reading error", "the caller's strips", Status.Computed);
}

/// <summary>The cautions for bending test strips, in our own words.</summary>
public static class StripSafety
{
    private static readonly SafetyNote Pinch = new(
        "strip-pinch",
        SafetyLevel.Danger,
        $"A narrow strip brings fingers close to beam, leaf, punch and die: hold it with a backing piece or a stop, never by hand near the fold line, and keep the machine guarded as its maker and local law require.");

    private static readonly SafetyNote Release = new(
        "strip-release",
        SafetyLevel.Warning,
        $"A strip held round a form springs open when let go: ease it off, with face and hands out of its path.");

    private static readonly SafetyNote SameSheet = new(
        "same-sheet",
        SafetyLevel.Caution,
        $"What strips teach is valid for that sheet, tooling and grain direction. These values are estimates, not a design approval; local law, codes and the machine maker's instructions come first.");

    /// <summary>For strips that are folded in a brake.</summary>
    public static IReadOnlyList<SafetyNote> InTheBrake { get; } = [SameSheet, SafetyNotes.Edges, Pinch];

    /// <summary>For strips that are pulled over a form.</summary>
    public static IReadOnlyList<SafetyNote> OverTheForm { get; } = [SameSheet, SafetyNotes.Edges, Pinch, Release];
}
