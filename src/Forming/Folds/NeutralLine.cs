namespace Forming.Folds;

/// <summary>Where in the thickness a fold keeps its length.</summary>
/// <remarks>
/// <c>K = k/2</c>, <c>k = 0.65 + 0.5 log10(r/t)</c>, at most 1; used at every angle. Source key <c>din-6935</c>, which lets the
/// correction be nothing for openings above 165°: over many small folds that would lose 0.3 mm each.
/// </remarks>
public static class NeutralLine
{
    /// <summary>Below this radius over thickness the formula says nothing and the caller's own factor is needed.</summary>
    public const double SmallestRadiusOverThickness = 0.2;

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
