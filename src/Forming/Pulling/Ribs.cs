using Forming.Materials;
using Forming.Numerics;

namespace Forming.Pulling;

/// <summary>Ribs under a form, cut to its inside, which keep it from bending under the pull.</summary>
/// <param name="AtMm">Where they stand across the form, from one edge [mm]; the first and the last at the edges.</param>
/// <param name="SpacingMm">From one to the next [mm].</param>
/// <param name="ShareOfYield">Largest stress in the form's sheet between two of them over its yield.</param>
public sealed record Ribs(IReadOnlyList<double> AtMm, double SpacingMm, double ShareOfYield)
{
    /// <summary>What to cut, in the plane of the section [mm]; empty where the form curls up too far for one.</summary>
    public IReadOnlyList<Point> Outline { get; init; } = [];

    /// <summary>Whether the form's sheet bears the pull between them.</summary>
    public bool HoldSheet => ShareOfYield <= MostShare * (1 + 1e-9);

    /// <summary>Ribs stand no further apart [mm]: an assumption.</summary>
    public const double MostSpacingMm = 200;

    /// <summary>Closer than this nobody sets ribs [mm]: an assumption.</summary>
    public const double LeastSpacingMm = 25;

    /// <summary>The form's sheet is to carry no more than this share of its yield between ribs: an assumption.</summary>
    public const double MostShare = 0.5;

    /// <summary>
    /// Catalan's number over π²: moment over <c>(1 + v) q s</c> in the middle of a long plate on two edges s apart, under a line load q from
    /// one edge to the other.
    /// </summary>
    private const double PlateFactor = 0.915965594177219 / (Math.PI * Math.PI);

    /// <summary>Plans ribs.</summary>
    /// <param name="sheet">The form's sheet.</param>
    /// <param name="widthMm">The form's width [mm], &gt; 0.</param>
    /// <param name="pushPerWidth">Largest push on a fold, per width of the form [N/mm], at least 0.</param>
    /// <remarks>
    /// Between two ribs the sheet carries the push on a fold as a plate, simply supported on both and long the other way. Levy's series
    /// for one sine along the load is <c>w = q s³/(4 π³ D) (1 + π y/s) exp(-π y/s)</c>, and moments <c>q s (1 + v)/(4 π)</c> both ways;
    /// summed over the sines of an even load, <c>M = G/π² (1 + v) q s</c>, stress <c>6 M/t²</c>, alike both ways, so that it is the
    /// comparison stress too. Worked out here from the plate equation. Folds stiffen the sheet beyond that; a free edge near the load weakens it.
    /// </remarks>
    public static Ribs Of(Sheet sheet, double widthMm, double pushPerWidth)
    {
        var stressPerMm = 6 * PlateFactor * (1 + sheet.Material.PoissonRatio) * pushPerWidth / (sheet.ThicknessMm * sheet.ThicknessMm);
        var allowed = MostShare * sheet.Material.YieldMpa / stressPerMm; // infinite where nothing pushes
        var bays = Math.Max(1, (int)Math.Ceiling(widthMm / Math.Clamp(allowed, LeastSpacingMm, MostSpacingMm)));
        var spacing = widthMm / bays;
        return new([.. Enumerable.Range(0, bays + 1).Select(i => spacing * i)], spacing, stressPerMm * spacing / sheet.Material.YieldMpa);
    }

    /// <summary>What to cut: from the clamp along the form's inside to its end, and back square to the lead-in.</summary>
    /// <param name="insideProfile">The form's inside face, end of the lead-in to end of the lead-out [mm].</param>
    /// <param name="clampGapMm">From the first fold's tangent line back to the clamp [mm], at least 0.</param>
    /// <returns>Corners [mm], the last joined to the first; none where the outline would cross itself.</returns>
    public static IReadOnlyList<Point> OutlineOf(IReadOnlyList<Point> insideProfile, double clampGapMm)
    {
        var leadIn = insideProfile[0];
        var foot = new Point(Math.Max(leadIn.X, insideProfile[1].X - clampGapMm), leadIn.Y);
        var outline = new List<Point> { foot };
        for (var i = 1; i < insideProfile.Count; i++)
        {
            Point last = outline[^1], next = insideProfile[i];
            if (next.X < foot.X)
            {
                // What hangs over the clamp is left free.
                outline.Add(last + ((foot.X - last.X) / (next.X - last.X) * (next - last)));
                return outline;
            }

            if (next != last)
                outline.Add(next);
        }

        if (outline[^1].X > foot.X)
            outline.Add(new(foot.X, outline[^1].Y));
        return SimplePolygon.FirstCrossing(outline) is null ? outline : [];
    }
}
