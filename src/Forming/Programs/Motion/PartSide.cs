using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>
/// One side of the part, from the tangent line of the fold under way outwards, seen along that line: its mid surface starts at (0, 0) along
/// x and turns left.
/// </summary>
/// <remarks>
/// Made folds are arcs, here in chords; folds not yet made are flat; flats between made folds are one run. Parallel folds are seen end on,
/// as one line. Of a taper the outline is seen of everything that bends or ends: no section square to the line has anything outside it,
/// so what keeps clear of the outline keeps clear all along.
/// </remarks>
internal sealed class PartSide
{
    /// <summary>Chords for clearances [rad]: a sagitta of 0.0038 of the mid radius.</summary>
    public const double Coarse = 10 * Math.PI / 180;

    /// <summary>Chords for measuring [rad]: a sagitta of 0.00004 of the mid radius.</summary>
    public const double Fine = Math.PI / 180;

    private readonly int _beyond;

    private PartSide(Point[] points, Stretch[] stretches, int beyond)
    {
        (Points, Stretches, _beyond) = (points, stretches, beyond);
        ReachMm = points.Max(point => point.Length);
    }

    /// <summary>[n] points of the mid surface, and of the faces at a slanting edge; the first is the origin [mm].</summary>
    public Point[] Points { get; }

    /// <summary>Stretches of the mid surface, those of the run first.</summary>
    public Stretch[] Stretches { get; }

    /// <summary>Those past the run beside the fold.</summary>
    public ReadOnlySpan<Stretch> Beyond => Stretches.AsSpan(_beyond);

    /// <summary>Indices of the points within made folds.</summary>
    public required int[] FoldPoints { get; init; }

    /// <summary>Length of the run beside the fold, where it is shortest [mm].</summary>
    public required double RunMm { get; init; }

    /// <summary>The same where it is longest [mm].</summary>
    public required double LongestRunMm { get; init; }

    /// <summary>Whether it is shorter at the far end of the fold; false where it is as long everywhere.</summary>
    public bool IsShorterFar { get; init; }

    /// <summary>Index of the point at which the run ends where it is longest.</summary>
    public required int RunTip { get; init; }

    /// <summary>Turn of all made folds on this side [rad].</summary>
    public required double Turn { get; init; }

    /// <summary>The side in space; null where all folds are parallel.</summary>
    public TaperSide? InSpace { get; init; }

    /// <summary>Largest distance from the tangent line [mm].</summary>
    public double ReachMm { get; }

    /// <summary>Whether a made fold lies on this side.</summary>
    public bool IsFolded => FoldPoints.Length > 0;

    /// <summary>One side of a fold.</summary>
    /// <param name="part">The part.</param>
    /// <param name="made">The folds that are made.</param>
    /// <param name="fold">The fold under way.</param>
    /// <param name="towards">The edge on this side.</param>
    /// <param name="chord">Largest turn of a chord [rad].</param>
    public static PartSide Of(ProgramPart part, FoldSet made, int fold, PartEdge towards, double chord = Coarse) =>
        part.Flat is null ? Parallel(part, made, fold, towards, chord) : Seen(TaperSide.Of(part, made, fold, towards, chord));

    private static PartSide Parallel(ProgramPart part, FoldSet made, int fold, PartEdge towards, double chord)
    {
        var step = towards == PartEdge.End ? 1 : -1;
        var radius = part.Shape.RadiusMm + (part.Shape.ThicknessMm / 2);
        List<Point> points = [Point.Origin];
        List<double> headings = [];
        var (at, heading, run, pending) = (Point.Origin, 0.0, double.NaN, 0.0);
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
                run = pending;
            pending = 0;
            if (isEdge)
                break;
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

        Stretch[] stretches = [.. headings.Select((largest, i) => new Stretch(i, i + 1, largest, i + 1 == headings.Count))];
        return new([.. points], stretches, 1)
        {
            FoldPoints = [.. Enumerable.Range(1, points.Count - 2)],
            RunMm = run,
            LongestRunMm = run,
            RunTip = 1,
            Turn = heading,
        };
    }

    // Both ends of every line, the stretches between them, and the lines at which the sheet bends or ends.
    private static PartSide Seen(TaperSide side)
    {
        var lines = side.Lines;
        var (last, runEnd) = (lines.Count - 1, side.RunEnd);
        Point[] points =
        [
            .. lines.SelectMany(line => (Point[])[Flat(line.Near), Flat(line.Far)]),
            .. side.EdgeFaces.Select(Flat),
        ];
        List<Stretch> run = [Across(0, 0)], beyond = [];
        for (var i = 0; i < last; i++)
        {
            var to = i < runEnd ? run : beyond;
            to.AddRange(Onwards(i));
            if (i + 1 >= runEnd && runEnd < last && lines[i + 1].IsCorner)
                beyond.Add(Across(i + 1, lines[Math.Min(i + 2, last)].Heading));
        }

        double near = lines[runEnd].Near.X, far = lines[runEnd].Far.X;
        return new(points, [.. run, .. beyond], run.Count)
        {
            FoldPoints =
            [
                .. Enumerable.Range(runEnd, last - runEnd).Where(i => lines[i].IsCorner).SelectMany(i => (int[])[2 * i, (2 * i) + 1]),
            ],
            RunMm = Math.Min(near, far),
            LongestRunMm = Math.Max(near, far),
            IsShorterFar = far < near,
            RunTip = (2 * runEnd) + (far > near ? 1 : 0),
            Turn = lines[^1].Heading,
            InSpace = side,
        };

        Stretch[] Onwards(int i) =>
        [
            new(2 * i, (2 * i) + 2, lines[i + 1].Heading, i + 1 == last, i + 1 == last ? 2 * lines.Count : null),
            new((2 * i) + 1, (2 * i) + 3, lines[i + 1].Heading, i + 1 == last, i + 1 == last ? (2 * lines.Count) + 1 : null),
        ];

        Stretch Across(int i, double heading) => new(2 * i, (2 * i) + 1, heading, i == last, i == last ? (2 * lines.Count) + 1 : null);

        static Point Flat(Point3 point) => new(point.X, point.Y);
    }
}

/// <summary>A straight stretch of the mid surface.</summary>
/// <param name="From">Index of its inner point.</param>
/// <param name="To">Index of its outer point.</param>
/// <param name="Heading">Largest direction within it [rad].</param>
/// <param name="IsEnd">Whether it ends at the cut edge of the part, or lies along it.</param>
/// <param name="Face">Index of the point of the inside face over its outer point, where the edge is seen slanting; else null.</param>
internal readonly record struct Stretch(int From, int To, double Heading, bool IsEnd, int? Face = null);
