namespace Forming.Programs.Motion;

/// <summary>The part in the brake at one angle of a fold, for a picture.</summary>
/// <param name="Back">[n] mid surface behind the fold, from it outwards [mm].</param>
/// <param name="Front">[n] mid surface in front of the fold, from it outwards [mm].</param>
/// <param name="Jaws">Outlines of the tools, by name.</param>
public sealed record PartInJaws(
    IReadOnlyList<Point> Back, IReadOnlyList<Point> Front, IReadOnlyList<(string Name, IReadOnlyList<Point> Outline)> Jaws);
