namespace Forming.Tapers;

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
