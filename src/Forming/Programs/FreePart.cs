namespace Forming.Programs;

/// <summary>The part by itself, with some folds made: one line of its mid surface, from edge to edge, and the centre its folds lie round.</summary>
internal sealed class FreePart
{
    private FreePart(Point[] points, Point centre, bool startsInFront)
    {
        (Points, Centre) = (points, centre);
        (Start, var inwards) = startsInFront ? (points[^1], points[^2]) : (points[0], points[1]);
        StartHeading = Math.Atan2(inwards.Y - Start.Y, inwards.X - Start.X);
        ReachMm = points.Max(point => (point - centre).Length);
    }

    /// <summary>[n] mid surface from the edge behind to the edge in front [mm].</summary>
    public Point[] Points { get; }

    /// <summary>Mean of the made folds' places, or of the whole part without one [mm].</summary>
    public Point Centre { get; }

    /// <summary>Largest distance from the centre [mm].</summary>
    public double ReachMm { get; }

    /// <summary>The start edge [mm].</summary>
    public Point Start { get; }

    /// <summary>Direction of the flat at the start edge, inwards [rad].</summary>
    public double StartHeading { get; }

    /// <summary>The part as it lies in the brake.</summary>
    /// <param name="pose">Where it lies.</param>
    /// <param name="back">Behind the fold.</param>
    /// <param name="front">In front of it.</param>
    /// <param name="startsInFront">Whether the start edge is in front.</param>
    public static FreePart Of(PartPose pose, PartSide back, PartSide front, bool startsInFront)
    {
        Point[] points = [.. pose.Back.Reverse(), .. pose.Front];
        List<Point> folded = [.. pose.Back.Skip(back.RunEnd), .. pose.Front.Skip(front.RunEnd)];
        if (folded.Count == 0)
            folded = [.. points];
        return new(points, 1.0 / folded.Count * folded.Aggregate(Point.Origin, (sum, point) => sum + point), startsInFront);
    }
}
