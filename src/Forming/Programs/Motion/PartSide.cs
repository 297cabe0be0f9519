using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>
/// One side of the part, from the tangent line of the fold under way outwards: its mid surface starts at (0, 0) along x and turns left.
/// </summary>
/// <remarks>Made folds are arcs, here in chords; folds not yet made are flat; flats between made folds are one run.</remarks>
internal sealed class PartSide
{
    /// <summary>Chords for clearances [rad]: a sagitta of 0.0038 of the mid radius.</summary>
    public const double Coarse = 10 * Math.PI / 180;

    /// <summary>Chords for measuring [rad]: a sagitta of 0.00004 of the mid radius.</summary>
    public const double Fine = Math.PI / 180;

    private PartSide(Point[] points, double[] headings, int runEnd, double runMm, double turn)
    {
        Points = points;
        Headings = headings;
        RunEnd = runEnd;
        RunMm = runMm;
        Turn = turn;
        ReachMm = points.Max(point => point.Length);
    }

    /// <summary>[n + 1] points of the mid surface [mm].</summary>
    public Point[] Points { get; }

    /// <summary>[n] largest direction within each segment [rad].</summary>
    public double[] Headings { get; }

    /// <summary>Index of the point at which the run beside the fold ends.</summary>
    public int RunEnd { get; }

    /// <summary>Length of the run beside the fold [mm].</summary>
    public double RunMm { get; }

    /// <summary>Turn of all made folds on this side [rad].</summary>
    public double Turn { get; }

    /// <summary>Largest distance from the tangent line [mm].</summary>
    public double ReachMm { get; }

    /// <summary>Whether a made fold lies on this side.</summary>
    public bool IsFolded => RunEnd < Points.Length - 1;

    /// <summary>One side of a fold.</summary>
    /// <param name="part">The part.</param>
    /// <param name="made">The folds that are made.</param>
    /// <param name="fold">The fold under way.</param>
    /// <param name="towards">The edge on this side.</param>
    /// <param name="chord">Largest turn of a chord [rad].</param>
    public static PartSide Of(ProgramPart part, FoldSet made, int fold, PartEdge towards, double chord = Coarse)
    {
        var step = towards == PartEdge.End ? 1 : -1;
        var radius = part.Shape.RadiusMm + (part.Shape.ThicknessMm / 2);
        List<Point> points = [Point.Origin];
        List<double> headings = [];
        var (at, heading, run, pending) = (Point.Origin, 0.0, double.NaN, 0.0);
        var runEnd = 0;
        for (var next = fold + step; ; next += step)
        {
            // Straight part k lies before fold k.
            pending += part.StraightsMm[step > 0 ? next : next + 1];
            var isEdge = next < 0 || next >= part.Folds;
            if (!isEdge && !made.Has(next))
            {
                pending += part.Allowance(next);
                continue;
            }

            at += pending * Point.Along(heading);
            points.Add(at);
            headings.Add(heading);
            if (double.IsNaN(run))
                (run, runEnd) = (pending, points.Count - 1);
            pending = 0;
            if (isEdge)
                return new([.. points], [.. headings], runEnd, run, heading);
            var centre = at + (radius * Point.Along(heading).Left());
            var count = (int)Math.Ceiling(part.FoldAngles[next] / chord);
            var from = heading;
            for (var i = 1; i <= count; i++)
            {
                heading = from + (part.FoldAngles[next] * i / count);
                at = centre - (radius * Point.Along(heading).Left());
                points.Add(at);
                headings.Add(heading);
            }
        }
    }
}
