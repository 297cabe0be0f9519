namespace Forming.Tapers;

/// <summary>Three unit vectors of the sheet at a ruling.</summary>
/// <param name="E">Along the ruling, to the far end.</param>
/// <param name="M">In the sheet, square to the ruling, onwards.</param>
/// <param name="N">Square to the sheet, outwards.</param>
internal readonly record struct Triad(Point3 E, Point3 M, Point3 N)
{
    /// <summary>A vector with these components.</summary>
    /// <param name="e">Along the ruling.</param>
    /// <param name="m">Onwards.</param>
    /// <param name="n">Outwards.</param>
    public Point3 Vector(double e, double m, double n) => (e * E) + (m * M) + (n * N);

    /// <summary>The triad turned by a rotation vector given in its own components; exactly orthogonal.</summary>
    /// <param name="rotation">Axis times angle [rad], in the components of e, m, N.</param>
    public Triad Turned(Point3 rotation)
    {
        var angle = rotation.Length;
        if (angle == 0)
            return this;
        var (sin, cos) = Math.SinCos(angle);
        var axis = 1 / angle * rotation;
        var self = this;
        return new(Column(new(1, 0, 0)), Column(new(0, 1, 0)), Column(new(0, 0, 1)));

        // Rodrigues: v cos + (k × v) sin + k (k·v)(1 - cos), then back to space by the old triad.
        Point3 Column(Point3 v)
        {
            var turned = (cos * v) + (sin * axis.Cross(v)) + ((1 - cos) * axis.Dot(v) * axis);
            return self.Vector(turned.X, turned.Y, turned.Z);
        }
    }
}
