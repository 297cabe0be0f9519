namespace Forming.Inspection;

/// <summary>The straight line through the points of one flat, by total least squares.</summary>
/// <param name="Through">A point of it: the mean [mm].</param>
/// <param name="Along">Its direction, a unit vector from the first point towards the last.</param>
/// <param name="LargestMissMm">Largest distance of a point from it [mm].</param>
public readonly record struct TemplateLine(Point Through, Point Along, double LargestMissMm)
{
    // Points spread alike in all directions have no line; this much of the spread has to lie along one.
    private const double LeastShape = 1e-9;

    /// <summary>Fits the line: <c>tan 2α = 2 Sxy/(Sxx - Syy)</c>.</summary>
    /// <param name="points">At least two points [mm].</param>
    /// <returns>The line, or null where the points show no direction.</returns>
    public static TemplateLine? Fit(IReadOnlyList<Point> points)
    {
        var sum = Point.Origin;
        foreach (var point in points)
            sum += point;
        var mean = 1.0 / points.Count * sum;
        double xx = 0, yy = 0, xy = 0;
        foreach (var point in points)
        {
            var from = point - mean;
            (xx, yy, xy) = (xx + (from.X * from.X), yy + (from.Y * from.Y), xy + (from.X * from.Y));
        }

        if (!(new Point(xx - yy, 2 * xy).Length > LeastShape * (xx + yy)))
            return null;
        var along = Point.Along(Math.Atan2(2 * xy, xx - yy) / 2);
        if (along.Dot(points[^1] - points[0]) < 0)
            along = -1 * along;
        var largest = points.Max(point => Math.Abs(along.Cross(point - mean)));
        return new(mean, along, largest);
    }
}

/// <summary>Where a form leaves its wanted curve.</summary>
/// <param name="Facet">Number of the fold before the first facet whose far end is past tolerance, from 1; the last is the lead-out.</param>
/// <param name="ByMm">How far its far end is off, square to the planned facet [mm]: positive inside the curve, folded too tight; negative
/// outside.</param>
public sealed record Departure(int Facet, double ByMm)
{
    /// <summary>Whether it lies inside the wanted curve.</summary>
    public bool IsInside => ByMm > 0;
}
