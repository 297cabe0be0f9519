namespace Forming;

/// <summary>An angle that cannot be mistaken for a bare number: radians inside, degrees only where a person reads.</summary>
/// <param name="Radians">The angle [rad], any sign, any number of turns.</param>
public readonly record struct Angle(double Radians) : IComparable<Angle>
{
    /// <summary>No turn at all.</summary>
    public static Angle Zero => default;

    /// <summary>The angle in degrees.</summary>
    public double Degrees => Radians * (180 / Math.PI);

    /// <summary>An angle read in degrees.</summary>
    /// <param name="degrees">The angle [°].</param>
    public static Angle FromDegrees(double degrees) => new(degrees * (Math.PI / 180));

    /// <summary>Sum of two angles.</summary>
    /// <param name="a">First angle.</param>
    /// <param name="b">Second angle.</param>
    public static Angle operator +(Angle a, Angle b) => new(a.Radians + b.Radians);

    /// <summary>Difference of two angles.</summary>
    /// <param name="a">First angle.</param>
    /// <param name="b">Second angle.</param>
    public static Angle operator -(Angle a, Angle b) => new(a.Radians - b.Radians);

    /// <summary>An angle taken a number of times.</summary>
    /// <param name="factor">The factor, dimensionless.</param>
    /// <param name="a">The angle.</param>
    public static Angle operator *(double factor, Angle a) => new(factor * a.Radians);

    /// <inheritdoc/>
    public int CompareTo(Angle other) => Radians.CompareTo(other.Radians);

    /// <summary>Whether the first angle is the smaller.</summary>
    /// <param name="a">First angle.</param>
    /// <param name="b">Second angle.</param>
    public static bool operator <(Angle a, Angle b) => a.Radians < b.Radians;

    /// <summary>Whether the first angle is the larger.</summary>
    /// <param name="a">First angle.</param>
    /// <param name="b">Second angle.</param>
    public static bool operator >(Angle a, Angle b) => a.Radians > b.Radians;

    /// <summary>Whether the first angle is not the larger.</summary>
    /// <param name="a">First angle.</param>
    /// <param name="b">Second angle.</param>
    public static bool operator <=(Angle a, Angle b) => a.Radians <= b.Radians;

    /// <summary>Whether the first angle is not the smaller.</summary>
    /// <param name="a">First angle.</param>
    /// <param name="b">Second angle.</param>
    public static bool operator >=(Angle a, Angle b) => a.Radians >= b.Radians;
}
