namespace Forming.Programs.Motion;

/// <summary>
/// The part by itself, with some folds made: its mid surface, seen along the fold it lies at, and the centre its folds lie round.
/// </summary>
internal sealed class FreePart
{
    /// <summary>A centre farther away than this many times the part's own extent says that the folds lie in a line.</summary>
    private const double FarthestCentre = 5;

    private readonly Placing _placing;

    private FreePart(Point[] points, (int From, int To)[] stretches, Point[] folds, Placing placing)
    {
        (Points, Stretches, _placing) = (points, stretches, placing);
        Centre = CentreOf(folds.Length > 0 ? folds : points);
        ReachMm = points.Max(point => (point - Centre).Length);
    }

    /// <summary>[n] points of its mid surface [mm].</summary>
    public Point[] Points { get; }

    /// <summary>Stretches between them.</summary>
    public (int From, int To)[] Stretches { get; }

    /// <summary>[n] places of the points along the fold, from the middle of the part; null where all folds are parallel [mm].</summary>
    public double[]? Along { get; private init; }

    /// <summary>
    /// Centre of the circle through the made folds, or their mean where they lie in a line, or that of the whole part without one [mm].
    /// </summary>
    /// <remarks>Turned about it, a folded part slides along itself.</remarks>
    public Point Centre { get; }

    /// <summary>Largest distance from the centre, seen along the fold [mm].</summary>
    public double ReachMm { get; }

    /// <summary>Largest distance from the centre in space [mm].</summary>
    public double ReachInSpaceMm => Along is null
        ? ReachMm
        : Points.Zip(Along).Max(at => Math.Sqrt((at.First - Centre).Dot(at.First - Centre) + (at.Second * at.Second)));

    /// <summary>The part as it lies in the brake.</summary>
    /// <param name="pose">Where it lies.</param>
    /// <param name="fold">Points of the fold just made, between the two sides.</param>
    /// <param name="back">Behind the fold.</param>
    /// <param name="front">In front of it.</param>
    /// <param name="startsInFront">Whether the start edge is in front.</param>
    public static FreePart Of(PartPose pose, IEnumerable<Point> fold, PartSide back, PartSide front, bool startsInFront)
    {
        Point[] folds = [.. back.FoldPoints.Select(i => pose.Back[i]), .. front.FoldPoints.Select(i => pose.Front[i])];
        if (back.InSpace is { } behind && front.InSpace is { } ahead)
            return InSpace(pose, [.. fold], folds, (back, behind), (front, ahead), startsInFront);
        Point[] points = [.. pose.Back.Reverse(), .. fold, .. pose.Front];
        var (start, inwards) = startsInFront ? (points[^1], points[^2]) : (points[0], points[1]);
        var along = inwards - start;
        return new(
            points,
            [.. Enumerable.Range(0, points.Length - 1).Select(i => (i, i + 1))],
            folds,
            new(start, Math.Atan2(along.Y, along.X), null));
    }

    /// <summary>The move that brings the part from where it lies to where another lies that is the same part.</summary>
    /// <param name="to">Where it shall lie.</param>
    public RigidMove MoveTo(FreePart to)
    {
        if (_placing.InSpace is not { } own || to._placing.InSpace is not { } other)
        {
            var turn = Math.IEEERemainder(to._placing.Heading - _placing.Heading, 2 * Math.PI);
            var by = to._placing.Start + (Centre - _placing.Start).TurnedTo(Point.Along(turn)) - Centre;
            return new(Point.Origin, by, 0, turn);
        }

        // Where the centre goes; how far along the fold is no matter to tools that are the same all along.
        var rotation = own.RotationTo(other);
        var centre = other.Origin + other.Of(own.Seen(new Point3(Centre.X, Centre.Y, 0) - own.Origin));
        var shift = new Point(centre.X, centre.Y) - Centre;
        return rotation.Length > 0
            ? new(Point.Origin, shift, 0, rotation.Length) { Axis = rotation.Unit() }
            : new(Point.Origin, shift, 0, 0);
    }

    private static FreePart InSpace(
        PartPose pose,
        Point[] fold,
        Point[] folds,
        (PartSide Seen, TaperSide Space) back,
        (PartSide Seen, TaperSide Space) front,
        bool startsInFront)
    {
        var length = back.Space.Lines[0].Far.Z;
        List<Point> points = [];
        List<double> along = [];
        List<(int From, int To)> stretches = [];
        Add(pose.Back, back);
        Add(pose.Front, front);

        // The fold itself, at both its ends.
        Point[] arc = [pose.Back[0], .. fold, pose.Front[0]];
        foreach (var z in (double[])[0, length])
        {
            stretches.AddRange(Enumerable.Range(points.Count, arc.Length - 1).Select(i => (i, i + 1)));
            points.AddRange(arc);
            along.AddRange(Enumerable.Repeat(z, arc.Length));
        }

        var middle = (along.Min() + along.Max()) / 2;
        var (placed, space) = startsInFront ? (pose.Front, front.Space) : (pose.Back, back.Space);
        var edge = space.Lines.Count - 1;
        return new([.. points], [.. stretches], folds, new(default, 0, Axes.Through(At(edge, false), At(edge, true), At(edge - 1, false))))
        {
            Along = [.. along.Select(z => z - middle)],
        };

        // The lead-in's facet tells how the part lies.
        Point3 At(int line, bool isFar)
        {
            var point = placed[(2 * line) + (isFar ? 1 : 0)];
            return new(point.X, point.Y, (isFar ? space.Lines[line].Far : space.Lines[line].Near).Z - middle);
        }

        void Add(Point[] there, (PartSide Seen, TaperSide Space) side)
        {
            var first = points.Count;
            stretches.AddRange(side.Seen.Stretches.Select(stretch => (first + stretch.From, first + stretch.To)));
            points.AddRange(there.Take(2 * side.Space.Lines.Count));
            along.AddRange(side.Space.Lines.SelectMany(line => (double[])[line.Near.Z, line.Far.Z]));
        }
    }

    // Least squares of x² + y² = 2 a x + 2 b y + c, about the mean.
    private static Point CentreOf(Point[] points)
    {
        var mean = 1.0 / points.Length * points.Aggregate(Point.Origin, (sum, point) => sum + point);
        double xx = 0, xy = 0, yy = 0, xs = 0, ys = 0, extent = 0;
        foreach (var point in points)
        {
            var p = point - mean;
            var square = p.Dot(p);
            xx += p.X * p.X;
            xy += p.X * p.Y;
            yy += p.Y * p.Y;
            xs += p.X * square;
            ys += p.Y * square;
            extent = Math.Max(extent, p.Length);
        }

        var size = (xx * yy) - (xy * xy);
        if (!(size > 0))
            return mean;
        var centre = new Point(((xs * yy) - (ys * xy)) / (2 * size), ((ys * xx) - (xs * xy)) / (2 * size));
        return centre.Length <= FarthestCentre * extent ? mean + centre : mean;
    }

    /// <summary>How the part lies: by its start edge, and in space by the lead-in's axes.</summary>
    private readonly record struct Placing(Point Start, double Heading, Axes? InSpace);
}
