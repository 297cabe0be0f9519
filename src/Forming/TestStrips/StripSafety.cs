using Forming.Plans.Notes;
using Forming.Results;

namespace Forming.TestStrips;

/// <summary>The cautions for bending test strips, in our own words.</summary>
internal static class StripSafety
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
        $"What strips teach holds for that sheet, tooling and grain direction. These figures are estimates, not a design approval; local law, codes and the machine maker's instructions come first.");

    /// <summary>For strips that are folded in a brake.</summary>
    public static IReadOnlyList<SafetyNote> InTheBrake { get; } = [SameSheet, SafetyNotes.Edges, Pinch];

    /// <summary>For strips that are pulled over a form.</summary>
    public static IReadOnlyList<SafetyNote> OverTheForm { get; } = [SameSheet, SafetyNotes.Edges, Pinch, Release];
}
