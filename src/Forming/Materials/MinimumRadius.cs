namespace Forming.Materials;

/// <summary>How tightly a sheet may be bent cold before its outer face cracks.</summary>
public static class MinimumRadius
{
    /// <summary>What the radius is multiplied by when the folds lie along the grain or the grain is unknown, dimensionless.</summary>
    /// <remarks>
    /// For structural plate as ASTM A6 is quoted, with the bend line parallel to rolling (key <c>astm-a6</c>);
    /// that sheet behaves alike is an assumption of this project (key <c>assumption</c>).
    /// </remarks>
    public const double AlongGrainFactor = 1.5;

    /// <summary>Smallest inside radius for folds in a sheet.</summary>
    /// <param name="material">The material; its radius over thickness is for folds across the grain, 90°, near 1.6 mm.</param>
    /// <param name="grainAcross">Whether the folds are known to lie across the grain; false along it or where it is unknown.</param>
    /// <param name="thickness">Thickness [mm], &gt; 0.</param>
    /// <returns>Least inside radius [mm], at least 0; 0 means that the sheet may be folded sharp.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The thickness is not positive and finite.</exception>
    /// <remarks>
    /// Source: <c>minRadiusOverThickness</c> of the material's provenance; along the grain <see cref="AlongGrainFactor"/>.
    /// A metal that folds sharp across the grain is taken to fold sharp along it. Thick sheet needs relatively more than this
    /// value and thin sheet less: the published tables rise with thickness.
    /// </remarks>
    public static double For(Material material, bool grainAcross, double thickness)
    {
        if (!double.IsFinite(thickness) || thickness <= 0)
            throw new ArgumentOutOfRangeException(nameof(thickness), thickness, "Thickness is a positive, finite length.");
        return material.MinRadiusOverThickness * (grainAcross ? 1 : AlongGrainFactor) * thickness;
    }

    /// <summary>Least inside radius over thickness that a metal's ductility allows.</summary>
    /// <param name="reductionOfArea">Reduction of area in the tensile test [%], above 0, at most 100.</param>
    /// <returns>Radius over thickness, dimensionless; 0 from a reduction of 50 % on, where the sheet folds sharp.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The reduction is not above 0 and at most 100.</exception>
    /// <remarks>R/t = 50 / r − 1. Source: key <c>kalpakjian-schmid</c>, eq. 16.5.</remarks>
    public static double OverThickness(double reductionOfArea)
    {
        if (!(reductionOfArea > 0 && reductionOfArea <= 100))
            throw new ArgumentOutOfRangeException(nameof(reductionOfArea), reductionOfArea, "Reduction of area is above 0 and at most 100 %.");
        return Math.Max(0, 50 / reductionOfArea - 1);
    }

    /// <summary>Strain of the outer face of a bend whose neutral line stays at mid-thickness.</summary>
    /// <param name="radiusOverThickness">Inside radius over thickness, dimensionless, at least 0.</param>
    /// <returns>Engineering strain, dimensionless, above 0, at most 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not finite or is negative.</exception>
    /// <remarks>e = 1 / (2 R / t + 1). Source: key <c>kalpakjian-schmid</c>, eq. 16.4.</remarks>
    public static double OuterFibreStrain(double radiusOverThickness)
    {
        if (!double.IsFinite(radiusOverThickness) || radiusOverThickness < 0)
            throw new ArgumentOutOfRangeException(nameof(radiusOverThickness), radiusOverThickness, "Radius over thickness is finite and at least 0.");
        return 1 / (2 * radiusOverThickness + 1);
    }
}
