namespace Forming.Tolerances;

/// <summary>Where the end of the lead-out comes to lie, the first flat held.</summary>
/// <param name="Bias">Mean place less the planned one [mm].</param>
/// <param name="Covariance">Spread about the mean.</param>
public sealed record EndSpread(Point Bias, Covariance Covariance)
{
    /// <summary>How far off the end may lie: the bias, and the spread in its widest direction.</summary>
    /// <param name="coverage">Standard deviations counted.</param>
    /// <returns>The distance [mm].</returns>
    public double ReachMm(double coverage) => Bias.Length + (coverage * Math.Sqrt(Math.Max(0, Covariance.LargestMm2)));
}
