using Forming.Results;

namespace Forming.Folds;

/// <summary>A fold of a sheet: its radius, thickness and neutral line, whatever its angle.</summary>
/// <param name="RadiusMm">Inside radius r [mm], &gt; 0.</param>
/// <param name="ThicknessMm">Thickness t [mm], &gt; 0.</param>
/// <param name="NeutralFactor">Neutral factor K.</param>
public readonly record struct FoldShape(double RadiusMm, double ThicknessMm, double NeutralFactor)
{
    /// <summary>Outside radius <c>p = r + t</c> [mm].</summary>
    public double OuterRadiusMm => RadiusMm + ThicknessMm;

    /// <summary>Radius of the neutral line, <c>r + K t</c> [mm].</summary>
    public double NeutralRadiusMm => RadiusMm + (NeutralFactor * ThicknessMm);

    /// <summary>Bend allowance <c>BA = a (r + K t)</c>: source key <c>kalpakjian-schmid</c>, eq. 16.2.</summary>
    /// <param name="foldAngle">Fold angle a [rad], at least 0.</param>
    /// <returns>Length of the neutral line in the fold [mm].</returns>
    public double BendAllowance(double foldAngle) => foldAngle * NeutralRadiusMm;

    /// <summary>Outside setback <c>SB = (r + t) tan(a/2)</c>: source key <c>faa-ac-43-13-1b</c>, ¶4-56.</summary>
    /// <param name="foldAngle">Fold angle a [rad], 0 to below π.</param>
    /// <returns>From the mold line to the bend tangent line [mm].</returns>
    public double Setback(double foldAngle) => OuterRadiusMm * Math.Tan(foldAngle / 2);

    /// <summary>Bend deduction <c>2 SB - BA</c> [mm].</summary>
    /// <param name="foldAngle">Fold angle a [rad], 0 to below π.</param>
    public double Deduction(double foldAngle) => (2 * Setback(foldAngle)) - BendAllowance(foldAngle);
}

/// <summary>Where in the thickness a fold keeps its length.</summary>
/// <remarks>
/// <c>K = k/2</c>, <c>k = 0.65 + 0.5 log10(r/t)</c>, at most 1; used at every angle. Source key <c>din-6935</c>, which lets the
/// correction be nothing for openings above 165°: over many small folds that would lose 0.3 mm each.
/// </remarks>
public static class NeutralLine
{
    /// <summary>Below this radius over thickness the formula says nothing and the caller's own factor is needed.</summary>
    public const double SmallestRadiusOverThickness = WorkingLimits.LeastRadiusOverThickness;

    /// <summary>Neutral factor K of a fold.</summary>
    /// <param name="radiusMm">Inside radius [mm], at least 0.2 times the thickness.</param>
    /// <param name="thicknessMm">Thickness [mm], &gt; 0.</param>
    /// <returns>Distance of the neutral line from the inside face over the thickness, 0.15 to 0.5.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The radius is below 0.2 times the thickness.</exception>
    public static double Factor(double radiusMm, double thicknessMm)
    {
        var ratio = radiusMm / thicknessMm;
        ArgumentOutOfRangeException.ThrowIfLessThan(ratio, SmallestRadiusOverThickness, nameof(radiusMm));
        return Math.Min(1, 0.65 + (0.5 * Math.Log10(ratio))) / 2;
    }
}
