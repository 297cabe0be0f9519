namespace Forming;

/// <summary>A point, or a vector, in the plane of the section.</summary>
/// <param name="X">Abscissa [mm].</param>
/// <param name="Y">Ordinate [mm].</param>
public readonly record struct Point(double X, double Y)
{
    /// <summary>The origin.</summary>
    public static Point Origin => default;

    /// <summary>Distance from the origin [mm].</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>The unit vector in a direction.</summary>
    /// <param name="radians">Direction against the x axis [rad].</param>
    public static Point Along(double radians)
    {
        var (sin, cos) = Math.SinCos(radians);
        return new(cos, sin);
    }

    /// <summary>This vector turned a quarter turn to the left.</summary>
    public Point Left() => new(-Y, X);

    /// <summary>This vector turned as far as a unit vector is turned from the x axis.</summary>
    /// <param name="along">The unit vector.</param>
    public Point TurnedTo(Point along) => (X * along) + (Y * along.Left());

    /// <summary>Scalar product.</summary>
    /// <param name="other">The other vector.</param>
    public double Dot(Point other) => (X * other.X) + (Y * other.Y);

    /// <summary>The vector product's component out of the plane.</summary>
    /// <param name="other">The other vector.</param>
    public double Cross(Point other) => (X * other.Y) - (Y * other.X);

    /// <summary>Sum of two vectors.</summary>
    /// <param name="a">First vector.</param>
    /// <param name="b">Second vector.</param>
    public static Point operator +(Point a, Point b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Difference of two vectors.</summary>
    /// <param name="a">First vector.</param>
    /// <param name="b">Second vector.</param>
    public static Point operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>A vector made longer.</summary>
    /// <param name="factor">The factor, dimensionless.</param>
    /// <param name="a">The vector.</param>
    public static Point operator *(double factor, Point a) => new(factor * a.X, factor * a.Y);
}
