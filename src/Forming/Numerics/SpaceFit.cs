using MathNet.Numerics.LinearAlgebra;

namespace Forming.Numerics;

/// <summary>One set of points in space laid over another as well as it goes, by turning and shifting.</summary>
/// <param name="Turn">How the first set had to be turned: axis times angle [rad].</param>
/// <param name="Misses">[n] from each point of the first set, turned and shifted, to where it should lie [mm].</param>
public sealed record SpaceFit(Point3 Turn, Point3[] Misses)
{
    /// <summary>Points in line leave a turn about it open; this share of their spread lets none win.</summary>
    private const double Least = 1e-13;

    /// <summary>Fits by least squares about both centroids.</summary>
    /// <remarks>The turn is the quaternion of the largest eigenvalue of Horn's matrix of products.</remarks>
    /// <param name="points">[n] points to lay over [mm].</param>
    /// <param name="onto">[n] where they should lie [mm].</param>
    public static SpaceFit Of(IReadOnlyList<Point3> points, IReadOnlyList<Point3> onto)
    {
        var (from, to) = (Mean(points), Mean(onto));
        var products = Matrix<double>.Build.Dense(4, 4);
        for (var i = 0; i < points.Count; i++)
        {
            Point3 a = points[i] - from, b = onto[i] - to, cross = a.Cross(b);
            products += Matrix<double>.Build.DenseOfRowMajor(4, 4,
            [
                a.Dot(b), cross.X, cross.Y, cross.Z,
                cross.X, (2 * a.X * b.X) - a.Dot(b), (a.X * b.Y) + (a.Y * b.X), (a.X * b.Z) + (a.Z * b.X),
                cross.Y, (a.X * b.Y) + (a.Y * b.X), (2 * a.Y * b.Y) - a.Dot(b), (a.Y * b.Z) + (a.Z * b.Y),
                cross.Z, (a.X * b.Z) + (a.Z * b.X), (a.Y * b.Z) + (a.Z * b.Y), (2 * a.Z * b.Z) - a.Dot(b),
            ]);
        }

        products[0, 0] += Least * products.FrobeniusNorm();
        var quaternion = products.Evd(Symmetricity.Symmetric).EigenVectors.Column(3);
        // A quaternion and its negative are one turn; the shorter way is meant.
        if (quaternion[0] < 0)
            quaternion = -quaternion;
        var vector = new Point3(quaternion[1], quaternion[2], quaternion[3]);
        var angle = 2 * Math.Atan2(vector.Length, quaternion[0]);
        var turn = vector.Length > 0 ? angle / vector.Length * vector : default;
        return new(turn, [.. points.Select((point, i) => onto[i] - to - Turned(point - from))]);

        // v + 2 q × (q × v + q0 v)
        Point3 Turned(Point3 v) => v + (2 * vector.Cross(vector.Cross(v) + (quaternion[0] * v)));
    }

    private static Point3 Mean(IReadOnlyList<Point3> points)
    {
        var sum = default(Point3);
        foreach (var point in points)
            sum += point;
        return 1.0 / points.Count * sum;
    }
}
