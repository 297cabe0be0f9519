namespace Forming.Tolerances;

/// <summary>Where the end of the lead-out is, the first flat fixed.</summary>
/// <param name="Bias">Mean place less the planned one [mm].</param>
/// <param name="Covariance">Spread about the mean.</param>
public sealed record EndSpread(Point Bias, Covariance Covariance)
{
    /// <summary>The bias out of the section's plane, along z [mm]; 0 where the folds are parallel.</summary>
    public double BiasZMm { get; init; }

    /// <summary>The bias in space [mm].</summary>
    public Point3 BiasInSpace => new(Bias.X, Bias.Y, BiasZMm);

    /// <summary>Length of the bias [mm].</summary>
    public double BiasMm => BiasInSpace.Length;

    /// <summary>How far off the end may lie: the bias, and the spread in its widest direction.</summary>
    /// <param name="coverage">Standard deviations counted.</param>
    /// <returns>The distance [mm].</returns>
    public double ReachMm(double coverage) => BiasMm + (coverage * Math.Sqrt(Math.Max(0, Covariance.LargestMm2)));
}

/// <summary>Covariance of a point in the plane of the section; where folds are not parallel, out of it as well.</summary>
/// <param name="XxMm2">Variance along x [mm²].</param>
/// <param name="YyMm2">Variance along y [mm²].</param>
/// <param name="XyMm2">Covariance of both [mm²].</param>
public readonly record struct Covariance(double XxMm2, double YyMm2, double XyMm2)
{
    // Quantile of chi squared with two degrees of freedom, in closed form: -2 ln(1 - 0.95).
    private static readonly double Radius95 = Math.Sqrt(-2 * Math.Log(0.05));

    /// <summary>Covariance of x and z [mm²].</summary>
    public double XzMm2 { get; init; }

    /// <summary>Covariance of y and z [mm²].</summary>
    public double YzMm2 { get; init; }

    /// <summary>Variance along z [mm²].</summary>
    public double ZzMm2 { get; init; }

    /// <summary>Largest variance in any direction [mm²].</summary>
    public double LargestMm2 => (XzMm2, YzMm2, ZzMm2) == default ? Middle + Half : LargestInSpace();

    /// <summary>Standard deviations along x, y and z [mm].</summary>
    public Point3 Deviations => new(Math.Sqrt(Math.Max(0, XxMm2)), Math.Sqrt(Math.Max(0, YyMm2)), Math.Sqrt(Math.Max(0, ZzMm2)));

    /// <summary>That of one vector: its product with itself.</summary>
    /// <param name="vector">The vector [mm].</param>
    public static Covariance Of(Point3 vector) => new(vector.X * vector.X, vector.Y * vector.Y, vector.X * vector.Y)
    {
        XzMm2 = vector.X * vector.Z,
        YzMm2 = vector.Y * vector.Z,
        ZzMm2 = vector.Z * vector.Z,
    };

    /// <summary>Sum of two covariances.</summary>
    /// <param name="a">First one.</param>
    /// <param name="b">Second one.</param>
    public static Covariance operator +(Covariance a, Covariance b) => new(a.XxMm2 + b.XxMm2, a.YyMm2 + b.YyMm2, a.XyMm2 + b.XyMm2)
    {
        XzMm2 = a.XzMm2 + b.XzMm2,
        YzMm2 = a.YzMm2 + b.YzMm2,
        ZzMm2 = a.ZzMm2 + b.ZzMm2,
    };

    /// <summary>A covariance made larger.</summary>
    /// <param name="factor">The factor, dimensionless.</param>
    /// <param name="a">The covariance.</param>
    public static Covariance operator *(double factor, Covariance a) => new(factor * a.XxMm2, factor * a.YyMm2, factor * a.XyMm2)
    {
        XzMm2 = factor * a.XzMm2,
        YzMm2 = factor * a.YzMm2,
        ZzMm2 = factor * a.ZzMm2,
    };

    /// <summary>The same in other directions.</summary>
    /// <param name="x">New x axis, a unit vector.</param>
    /// <param name="y">New y axis, square to it.</param>
    /// <param name="z">New z axis, square to both.</param>
    internal Covariance In(Point3 x, Point3 y, Point3 z)
    {
        Point3 ofX = Times(x), ofY = Times(y), ofZ = Times(z);
        return new(x.Dot(ofX), y.Dot(ofY), x.Dot(ofY)) { XzMm2 = x.Dot(ofZ), YzMm2 = y.Dot(ofZ), ZzMm2 = z.Dot(ofZ) };
    }

    /// <summary>Back from other directions.</summary>
    /// <param name="x">x axis that it is given in, a unit vector.</param>
    /// <param name="y">y axis, square to it.</param>
    /// <param name="z">z axis, square to both.</param>
    internal Covariance Out(Point3 x, Point3 y, Point3 z) => In(new(x.X, y.X, z.X), new(x.Y, y.Y, z.Y), new(x.Z, y.Z, z.Z));

    private Point3 Times(Point3 a) => new(
        (XxMm2 * a.X) + (XyMm2 * a.Y) + (XzMm2 * a.Z),
        (XyMm2 * a.X) + (YyMm2 * a.Y) + (YzMm2 * a.Z),
        (XzMm2 * a.X) + (YzMm2 * a.Y) + (ZzMm2 * a.Z));

    private double Middle => (XxMm2 + YyMm2) / 2;

    private double Half => new Point((XxMm2 - YyMm2) / 2, XyMm2).Length;

    // The largest eigenvalue of a symmetric matrix of three rows in closed form.
    private double LargestInSpace()
    {
        var mean = (XxMm2 + YyMm2 + ZzMm2) / 3;
        double x = XxMm2 - mean, y = YyMm2 - mean, z = ZzMm2 - mean;
        var off = (XyMm2 * XyMm2) + (XzMm2 * XzMm2) + (YzMm2 * YzMm2);
        var size = Math.Sqrt(((x * x) + (y * y) + (z * z) + (2 * off)) / 6);
        if (!(size > 0))
            return mean;
        var determinant = (x * ((y * z) - (YzMm2 * YzMm2))) - (XyMm2 * ((XyMm2 * z) - (YzMm2 * XzMm2)))
            + (XzMm2 * ((XyMm2 * YzMm2) - (y * XzMm2)));
        return mean + (2 * size * Math.Cos(Math.Acos(Math.Clamp(determinant / (2 * size * size * size), -1, 1)) / 3));
    }

    /// <summary>The ellipse in the section's plane that holds 95 % of a Gaussian point.</summary>
    public ErrorEllipse Ellipse95() => new(
        Radius95 * Math.Sqrt(Math.Max(0, LargestMm2)),
        Radius95 * Math.Sqrt(Math.Max(0, Middle - Half)),
        new(Math.Atan2(2 * XyMm2, XxMm2 - YyMm2) / 2));
}

/// <summary>An ellipse about the expected place.</summary>
/// <param name="SemiMajorMm">Larger semi-axis [mm].</param>
/// <param name="SemiMinorMm">Smaller semi-axis [mm].</param>
/// <param name="Direction">Direction of the larger one against the lead-in, -90° to 90°.</param>
public readonly record struct ErrorEllipse(double SemiMajorMm, double SemiMinorMm, Angle Direction);
