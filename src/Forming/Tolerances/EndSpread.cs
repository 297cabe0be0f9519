namespace Forming.Tolerances;

/// <summary>Where the end of the lead-out is, the first flat fixed.</summary>
/// <param name="Bias">Mean place less the planned one [mm].</param>
/// <param name="Covariance">Spread about the mean.</param>
public sealed record EndSpread(Point Bias, Covariance Covariance)
{
    /// <summary>How far off the end may lie: the bias, and the spread in its widest direction.</summary>
    /// <param name="coverage">Standard deviations counted.</param>
    /// <returns>The distance [mm].</returns>
    public double ReachMm(double coverage) => Bias.Length + (coverage * Math.Sqrt(Math.Max(0, Covariance.LargestMm2)));
}

/// <summary>Covariance of a point in the plane of the section.</summary>
/// <param name="XxMm2">Variance along x [mm²].</param>
/// <param name="YyMm2">Variance along y [mm²].</param>
/// <param name="XyMm2">Covariance of both [mm²].</param>
public readonly record struct Covariance(double XxMm2, double YyMm2, double XyMm2)
{
    // Quantile of chi squared with two degrees of freedom, in closed form: -2 ln(1 - 0.95).
    private static readonly double Radius95 = Math.Sqrt(-2 * Math.Log(0.05));

    /// <summary>Largest variance in any direction [mm²].</summary>
    public double LargestMm2 => Middle + Half;

    private double Middle => (XxMm2 + YyMm2) / 2;

    private double Half => new Point((XxMm2 - YyMm2) / 2, XyMm2).Length;

    /// <summary>The ellipse that holds 95 % of a Gaussian point.</summary>
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
