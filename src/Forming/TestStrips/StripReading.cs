namespace Forming.TestStrips;

/// <summary>One thing read on a strip, beside what a sheet would show there.</summary>
/// <param name="Strip">Place of the strip in the request.</param>
/// <param name="Pull">What the strip does.</param>
/// <param name="Observed">ln of the opening, or the sweep [rad].</param>
/// <param name="OwnHalf">95 % of readings lie within this, in the same unit.</param>
/// <param name="FoldHalf">What the folds' own errors make of it, 95 %, in the same unit; other readings over the form share it.</param>
/// <param name="IsSweep">Whether it is the sweep.</param>
internal sealed record StripReading(int Strip, StripPull Pull, double Observed, double OwnHalf, double FoldHalf, bool IsSweep)
{
    /// <summary>95 % of what is read lie within this.</summary>
    public double Half => Math.Sqrt((OwnHalf * OwnHalf) + (FoldHalf * FoldHalf));

    /// <summary>What is expected of a sheet.</summary>
    /// <param name="lnFactor">ln(yield factor).</param>
    /// <param name="lnHardening">ln(n/nominal n).</param>
    public double Expected(double lnFactor, double lnHardening = 0) =>
        IsSweep ? Pull.Sweep(lnFactor, lnHardening) : Pull.Opening(lnFactor, lnHardening);

    /// <summary>How much more the strip opened than expected, in reading errors; falls as the yield grows.</summary>
    /// <param name="lnFactor">ln(yield factor).</param>
    public double Residual(double lnFactor) => (IsSweep ? -1 : 1) * (Observed - Expected(lnFactor)) / Half;
}
