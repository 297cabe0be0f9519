namespace Forming.Programs.Motion;

/// <summary>
/// The part by itself, with some folds made: one line of its mid surface, from edge to edge, and the centre its folds lie round.
/// </summary>
internal sealed class FreePart
{
    /// <summary>A centre farther away than this many times the part's own extent says that the folds lie in a line.</summary>
    private const double FarthestCentre = 5;

    private FreePart(Point[] points, Point centre, bool startsInFront)
    {
        (Points, Centre) = (points, centre);
        (Start, var inwards) = startsInFront ? (points[^1], points[^2]) : (points[0], points[1]);
        StartHeading = Math.Atan2(inwards.Y - Start.Y, inwards.X - Start.X);
        ReachMm = points.Max(point => (point - centre).Length);
    }

    /// <summary>[n] mid surface from the edge behind to the edge in front [mm].</summary>
    public Point[] Points { get; }

    /// <summary>
    /// Centre of the circle through the made folds, or their mean where they lie in a line, or that of the whole part without one [mm].
    /// </summary>
    /// <remarks>Turned about it, a folded part slides along itself.</remarks>
    public Point Centre { get; }

    /// <summary>Largest distance from the centre [mm].</summary>
    public double ReachMm { get; }

    /// <summary>The start edge [mm].</summary>
    public Point Start { get; }

    /// <summary>Direction of the flat at the start edge, inwards [rad].</summary>
    public double StartHeading { get; }

    /// <summary>The part as it lies in the brake.</summary>
    /// <param name="pose">Where it lies.</param>
    /// <param name="fold">Points of the fold just made, between the two sides.</param>
    /// <param name="back">Behind the fold.</param>
    /// <param name="front">In front of it.</param>
    /// <param name="startsInFront">Whether the start edge is in front.</param>
    public static FreePart Of(PartPose pose, IEnumerable<Point> fold, PartSide back, PartSide front, bool startsInFront)
    {
        Point[] points = [.. pose.Back.Reverse(), .. fold, .. pose.Front];
        Point[] folds = [.. pose.Back[back.RunEnd..^1], .. pose.Front[front.RunEnd..^1]];
        return new(points, CentreOf(folds.Length > 0 ? folds : points), startsInFront);
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
}
