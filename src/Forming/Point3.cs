namespace Forming;

/// <summary>A point, or a vector, in space: x and y in the section's plane, z along the folds.</summary>
/// <param name="X">Abscissa [mm].</param>
/// <param name="Y">Ordinate [mm].</param>
/// <param name="Z">Along the folds, 0 at the near end [mm].</param>
public readonly record struct Point3(double X, double Y, double Z)
{
    /// <summary>Distance from the origin [mm].</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y) + (Z * Z));

    /// <summary>Scalar product.</summary>
    /// <param name="other">The other vector.</param>
    public double Dot(Point3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product.</summary>
    /// <param name="other">The other vector.</param>
    public Point3 Cross(Point3 other) => new(
        (Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>The unit vector along this one.</summary>
    public Point3 Unit() => 1 / Length * this;

    /// <summary>Sum of two vectors.</summary>
    /// <param name="a">First vector.</param>
    /// <param name="b">Second vector.</param>
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference of two vectors.</summary>
    /// <param name="a">First vector.</param>
    /// <param name="b">Second vector.</param>
    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>A vector made longer.</summary>
    /// <param name="factor">The factor, dimensionless.</param>
    /// <param name="a">The vector.</param>
    public static Point3 operator *(double factor, Point3 a) => new(factor * a.X, factor * a.Y, factor * a.Z);
}
