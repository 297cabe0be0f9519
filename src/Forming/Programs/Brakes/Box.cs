namespace Forming.Programs.Brakes;

/// <summary>An upright rectangle.</summary>
/// <param name="Left">Least x [mm].</param>
/// <param name="Low">Least y [mm].</param>
/// <param name="Right">Largest x [mm].</param>
/// <param name="High">Largest y [mm].</param>
internal readonly record struct Box(double Left, double Low, double Right, double High)
{
    public static Box Of(ReadOnlySpan<Point> points)
    {
        var box = new Box(points[0].X, points[0].Y, points[0].X, points[0].Y);
        foreach (var p in points)
            box = new(Math.Min(box.Left, p.X), Math.Min(box.Low, p.Y), Math.Max(box.Right, p.X), Math.Max(box.High, p.Y));
        return box;
    }

    /// <summary>Distance from a segment's own rectangle: no more than that of the two.</summary>
    public double DistanceTo(Point a, Point b) => Math.Sqrt(SquaredTo(a, b));

    /// <summary>The square of that distance.</summary>
    public double SquaredTo(Point a, Point b)
    {
        var x = Math.Max(0, Math.Max(Left - Math.Max(a.X, b.X), Math.Min(a.X, b.X) - Right));
        var y = Math.Max(0, Math.Max(Low - Math.Max(a.Y, b.Y), Math.Min(a.Y, b.Y) - High));
        return (x * x) + (y * y);
    }
}

/// <summary>A block of a brake in section.</summary>
/// <param name="WidthMm">Front to back [mm].</param>
/// <param name="HeightMm">Height [mm].</param>
public sealed record ToolSize(double WidthMm, double HeightMm);
