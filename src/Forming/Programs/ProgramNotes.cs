using Forming.Plans.Notes;
using Forming.Programs.Brakes;
using Forming.Results;

namespace Forming.Programs;

/// <summary>Cautions at the brake, and what a program's values rest on.</summary>
internal static class ProgramNotes
{
    public static IReadOnlyList<SafetyNote> Safety(ProgramPart part, ProgramBrake brake) =>
    [
        SafetyNotes.Edges,
        brake is PressBrake
            ? new("press-pinch", SafetyLevel.Danger, $"A press brake can crush hands between punch and die, and between the rising sheet and the ram. Use its guards and two-hand controls; nobody but a trained operator works it, by the maker's manual and local law.")
            : new("leaf-pinch", SafetyLevel.Danger, $"Beam and leaf can crush fingers, and the leaf strikes whoever stands in its swing. Keep hands out of both before clamping and before lifting the leaf; the maker's manual and local law come first."),
        new("dry-run", SafetyLevel.Caution, $"The tools here are outlines, not yours. Before the first part, swing every new kind of step by hand or slowly, and watch the folded part against beam, punch and ram."),
        new("springing-part", SafetyLevel.Caution, $"A half-folded form tips as it is drawn out or turned. Long ones take two people, one at each end."),
        new("eyes", SafetyLevel.Warning, $"Wear eye protection at the brake: a fold that cracks, or a tool that chips, throws splinters."),
        SafetyNotes.Noise,
        .. HasRating(brake) ? (SafetyNote[])[] : [SafetyNotes.Rating(part.Shape.ThicknessMm, part.MaterialName, part.WidthMm)],
    ];

    private static bool HasRating(ProgramBrake brake) => brake.Capacity is not null || brake is PressBrake { ForceCapacityN: not null };

    public static IReadOnlyList<Basis> Basis(ProgramPart part, ProgramBrake brake) =>
    [
        part.Flat is null
            ? new("steps.clearance", "the part followed through each swing in section; bounded motion between angles proves the least clearance to 0.02 mm. Checked against an independent sweep of the solid part: clearances from the jaws above, default and callers' own, and contacts with the tools below and of the part with itself; none of it on a brake", "geometry", Status.Computed)
            : new("steps.clearance", "the part in space, seen along the line of the fold: no section square to the fold reaches outside that outline, and the jaws are alike all along, so the least clearance is proved to 0.02 mm for every section, from the near end to the far one. What reaches past the fold's ends is checked as if the jaws reached there too; a brake that ends before has more room. The part against itself, past half a turn, is checked in sections: near end, middle, far end, and so many between that no fold line moves by more than a twentieth of the part's reach from one to the next; between them nothing is proved. Checked against sections of the solid part every 10 mm; none of it on a brake", "geometry", Status.Computed),
        new("tools", "outlines, gauge ranges, lifts and limits where the request gives none", "nothing was measured on a brake", Status.Assumption),
        new("steps.handling", "slide, draw out (lifted out of a die's groove first) and turn, followed in steps no longer than the clearance. Putting in and taking out are checked against all tools, the slide against the upper ones; starting on the nose and sliding along and off bed, leaf or die are allowed. Sufficient, not necessary: a person may find another way. Not checked on a brake", "costs: slide 1, draw out and re-enter 2, turn 3", Status.Assumption),
        part.Flat is null
            ? new("steps.gaugeDistance", "edge or folded part behind, from the sight line or the punch tip; over folded part not checked on a brake", "geometry", Status.Computed)
            : new("steps.marks", "where the sight line, or the centre line under a punch, crosses the long edges of the straight-edged sheet; no gauge sets a line that is not parallel to its edge", "geometry", Status.Computed),
        .. part.Flat is null
            ? (Basis[])[]
            : [new("steps.swing", "angle between the lines on the flat, facet by facet; on a slide the part turns level by it, and the slide is checked with that turn", "geometry", Status.Computed)],
        brake is PressBrake
            ? new("steps.force", "k UTS W t²/V with k = 1.33, and 2/√3 for the low value; peak load of a large bend, an upper bound for small folds", "university lecture text; k for a die of eight thicknesses", Status.PublishedAsQuoted)
            : new("steps.moment", "(2/√3) UTS t²/4 W; handle, leaf and clamp force by their arms, without the leaf's weight and friction", "Marciniak, Duncan & Hu eq. 6.21; statics", Status.Published),
        new("checks.capacity", "UTS t² over that of the rating; keep a fifth in hand", "common practice, no source", Status.CommonPractice),
        new("checks.handle-force", "225 N, standing, whole body", "Ergonomic Design for People at Work, vol. 2 (1986), quoted", Status.PublishedAsQuoted),
        .. brake is PressBrake
            ? (Basis[])[new("checks.die-opening", "at least five thicknesses: the force factor 1.33 was found at eight", "university lecture text; the limit itself is an assumption", Status.Assumption)]
            : [],
        new("program.stopRounding", "stop settings less stop angles, over the growth of the stop angle with the fold angle", "arithmetic", Status.Computed),
        new("impossible", "the finished part unfolded fold by fold until nothing is left to try; past 20000 states it says not found", "search", Status.Computed),
    ];
}
