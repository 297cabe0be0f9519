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
