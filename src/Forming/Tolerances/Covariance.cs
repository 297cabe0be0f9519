namespace Forming.Tolerances;

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
