namespace Forming.Programs.Motion;

/// <summary>Three unit vectors square to each other, fixed to a part.</summary>
/// <param name="Origin">Where they are [mm].</param>
/// <param name="One">First.</param>
/// <param name="Two">Second.</param>
/// <param name="Three">Third, <c>One × Two</c>.</param>
internal sealed record Axes(Point3 Origin, Point3 One, Point3 Two, Point3 Three)
{
    /// <summary>Axes along a line, and square to it towards a point.</summary>
    /// <param name="near">One end of the line; the origin.</param>
    /// <param name="far">Its other end.</param>
    /// <param name="aside">A point off the line.</param>
    public static Axes Through(Point3 near, Point3 far, Point3 aside)
    {
        var one = (far - near).Unit();
        var across = aside - near;
        var two = (across - (across.Dot(one) * one)).Unit();
        return new(near, one, two, one.Cross(two));
    }

    /// <summary>Components of a vector along the axes.</summary>
    public Point3 Seen(Point3 vector) => new(vector.Dot(One), vector.Dot(Two), vector.Dot(Three));

    /// <summary>The vector with these components.</summary>
    public Point3 Of(Point3 components) => (components.X * One) + (components.Y * Two) + (components.Z * Three);

    /// <summary>The turn that brings these axes to others: its axis times its angle, at most half a turn [rad].</summary>
    /// <param name="other">The others.</param>
    public Point3 RotationTo(Axes other)
    {
        // Twice the sine along the axis, and the cosine from the trace, of the matrix that takes one to the other.
        var sines = One.Cross(other.One) + Two.Cross(other.Two) + Three.Cross(other.Three);
        var cosine = (One.Dot(other.One) + Two.Dot(other.Two) + Three.Dot(other.Three) - 1) / 2;
        return sines.Length > 0 ? Math.Atan2(sines.Length / 2, cosine) / sines.Length * sines : default;
    }
}
