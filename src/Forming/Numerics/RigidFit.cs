namespace Forming.Inspection;

/// <summary>One set of points laid over another as well as it goes, by turning and shifting.</summary>
/// <param name="Turn">How far the first set had to be turned.</param>
/// <param name="MissesMm">[n] distances left [mm].</param>
public sealed record RigidFit(Angle Turn, double[] MissesMm)
{
    /// <summary>Fits by least squares: <c>tan α = Σ cross/Σ dot</c> about both centroids.</summary>
    /// <param name="points">[n] points to lay over [mm].</param>
    /// <param name="onto">[n] where they should lie [mm].</param>
    public static RigidFit Of(IReadOnlyList<Point> points, IReadOnlyList<Point> onto)
    {
        var (from, to) = (Mean(points), Mean(onto));
        double dot = 0, cross = 0;
        for (var i = 0; i < points.Count; i++)
        {
            dot += (points[i] - from).Dot(onto[i] - to);
            cross += (points[i] - from).Cross(onto[i] - to);
        }

        var turn = Math.Atan2(cross, dot);
        var along = Point.Along(turn);
        var misses = new double[points.Count];
        for (var i = 0; i < misses.Length; i++)
        {
            var arm = points[i] - from;
            misses[i] = (onto[i] - to - ((arm.X * along) + (arm.Y * along.Left()))).Length;
        }

        return new(new(turn), misses);
    }

    private static Point Mean(IReadOnlyList<Point> points)
    {
        var sum = Point.Origin;
        foreach (var point in points)
            sum += point;
        return 1.0 / points.Count * sum;
    }
}
