namespace Forming.Layout;

/// <summary>A rigid motion in space: a turn, then a shift.</summary>
/// <param name="X">Where the x axis goes, a unit vector.</param>
/// <param name="Y">Where the y axis goes, a unit vector.</param>
/// <param name="Z">Where the z axis goes, a unit vector.</param>
/// <param name="Shift">Where the origin goes [mm].</param>
public readonly record struct SpaceMotion(Point3 X, Point3 Y, Point3 Z, Point3 Shift)
{
    /// <summary>No motion at all.</summary>
    public static SpaceMotion None { get; } = new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

    /// <summary>A turn about a line.</summary>
    /// <param name="through">A point of the line [mm].</param>
    /// <param name="axis">Its direction, a unit vector.</param>
    /// <param name="angle">How far, right-handed about the direction [rad].</param>
    public static SpaceMotion About(Point3 through, Point3 axis, double angle)
    {
        var (sin, cos) = Math.SinCos(angle);
        var turn = new SpaceMotion(Of(new(1, 0, 0)), Of(new(0, 1, 0)), Of(new(0, 0, 1)), default);
        return turn with { Shift = through - turn.Turned(through) };

        Point3 Of(Point3 vector) => (cos * vector) + (sin * axis.Cross(vector)) + ((1 - cos) * axis.Dot(vector) * axis);
    }

    /// <summary>Where a point goes.</summary>
    /// <param name="point">The point [mm].</param>
    public Point3 Moved(Point3 point) => Shift + Turned(point);

    /// <summary>Where a direction goes.</summary>
    /// <param name="vector">The direction.</param>
    public Point3 Turned(Point3 vector) => (vector.X * X) + (vector.Y * Y) + (vector.Z * Z);

    /// <summary>Another motion first, then this one.</summary>
    /// <param name="first">The other one.</param>
    public SpaceMotion After(SpaceMotion first) => new(Turned(first.X), Turned(first.Y), Turned(first.Z), Moved(first.Shift));

    /// <summary>The turn that takes another motion's directions to this one's: axis times angle [rad].</summary>
    /// <param name="other">The other motion.</param>
    public Point3 TurnFrom(SpaceMotion other)
    {
        var twice = other.X.Cross(X) + other.Y.Cross(Y) + other.Z.Cross(Z);
        var sin = twice.Length / 2;
        var cos = (other.X.Dot(X) + other.Y.Dot(Y) + other.Z.Dot(Z) - 1) / 2;
        return sin == 0 ? default : Math.Atan2(sin, cos) / sin / 2 * twice;
    }
}
