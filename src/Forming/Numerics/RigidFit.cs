namespace Forming.Numerics;

/// <summary>One set of points laid over another as well as it goes, by turning and shifting.</summary>
/// <param name="Turn">How far the first set had to be turned.</param>
/// <param name="Misses">[n] from each point of the first set, turned and shifted, to where it should lie [mm].</param>
public sealed record RigidFit(Angle Turn, Point[] Misses)
{
    /// <summary>[n] distances left [mm].</summary>
    public IEnumerable<double> MissesMm => Misses.Select(miss => miss.Length);

    /// <summary>Fits by least squares: <c>tan α = Σ w cross/Σ w dot</c> about both centroids.</summary>
    /// <param name="points">[n] points to lay over [mm].</param>
    /// <param name="onto">[n] where they should lie [mm].</param>
    /// <param name="weights">[n] how much each counts; null where all count the same.</param>
    public static RigidFit Of(IReadOnlyList<Point> points, IReadOnlyList<Point> onto, IReadOnlyList<double>? weights = null)
    {
        weights ??= [.. Enumerable.Repeat(1.0, points.Count)];
        var (from, to) = (Mean(points, weights), Mean(onto, weights));
        double dot = 0, cross = 0;
        for (var i = 0; i < points.Count; i++)
        {
            dot += weights[i] * (points[i] - from).Dot(onto[i] - to);
            cross += weights[i] * (points[i] - from).Cross(onto[i] - to);
        }

        var turn = Math.Atan2(cross, dot);
        var along = Point.Along(turn);
        return new(new(turn), [.. points.Select((point, i) => onto[i] - to - (point - from).TurnedTo(along))]);
    }

    private static Point Mean(IReadOnlyList<Point> points, IReadOnlyList<double> weights)
    {
        var sum = Point.Origin;
        for (var i = 0; i < points.Count; i++)
            sum += weights[i] * points[i];
        return 1 / weights.Sum() * sum;
    }
}
