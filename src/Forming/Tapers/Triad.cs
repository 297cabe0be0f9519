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

/// <summary>A plane in space.</summary>
/// <param name="Through">A point of it [mm].</param>
/// <param name="Normal">Unit normal, outwards from the form.</param>
internal readonly record struct Plane(Point3 Through, Point3 Normal)
{
    /// <summary>Signed distance of a point [mm].</summary>
    /// <param name="point">The point.</param>
    public double Distance(Point3 point) => (point - Through).Dot(Normal);

    /// <summary>The plane moved outwards.</summary>
    /// <param name="distance">How far [mm].</param>
    public Plane MovedOut(double distance) => new(Through + (distance * Normal), Normal);

    /// <summary>Foot of a point on the line where this plane meets another.</summary>
    /// <param name="other">The other plane.</param>
    /// <param name="point">The point.</param>
    public Point3 FootOnMeetingLine(Plane other, Point3 point)
    {
        // point + a n1 + b n2 lies in both planes.
        var c = Normal.Dot(other.Normal);
        double d1 = -Distance(point), d2 = -other.Distance(point);
        var scale = 1 / (1 - (c * c));
        return point + (scale * (d1 - (c * d2)) * Normal) + (scale * (d2 - (c * d1)) * other.Normal);
    }
}
