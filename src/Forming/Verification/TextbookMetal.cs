using Forming.Materials;
using Forming.Results;

namespace Forming.Verification;

/// <summary>Metals as textbooks and tables give them: what bending asks for and no more.</summary>
internal static class TextbookMetal
{
    /// <summary>A metal of which only the elastic constants and the yield stress are known: perfectly plastic.</summary>
    /// <param name="modulusMpa">Young's modulus [MPa].</param>
    /// <param name="poisson">Poisson's ratio.</param>
    /// <param name="yieldMpa">Yield stress [MPa].</param>
    public static Material Perfect(double modulusMpa, double poisson, double yieldMpa) => new()
    {
        Id = "custom",
        Name = "textbook metal",
        Family = MetalFamily.Other,
        YoungsModulusMpa = modulusMpa,
        PoissonRatio = poisson,
        YieldMpa = yieldMpa,
        UltimateMpa = yieldMpa,
        DensityKgPerCubicMetre = 2700,
        MinRadiusOverThickness = 0,
    };

    /// <summary>A metal whose wide bending law has E' = E and Y' = Y: the uniaxial values of a textbook put into plane strain.</summary>
    /// <param name="modulusMpa">E [MPa].</param>
    /// <param name="yieldMpa">Y [MPa].</param>
    public static Material Uniaxial(double modulusMpa, double yieldMpa) => Perfect(modulusMpa, 0, Math.Sqrt(3) / 2 * yieldMpa);

    /// <summary>A metal with a flow curve K (eps0 + p)^n that starts at the yield stress.</summary>
    /// <param name="modulusMpa">Young's modulus [MPa].</param>
    /// <param name="poisson">Poisson's ratio.</param>
    /// <param name="yieldMpa">Yield stress [MPa].</param>
    /// <param name="n">Exponent n.</param>
    /// <param name="strengthCoefficientMpa">K [MPa].</param>
    public static Material Hardening(double modulusMpa, double poisson, double yieldMpa, double n, double strengthCoefficientMpa) =>
        Perfect(modulusMpa, poisson, yieldMpa) with
        {
            StrainHardening = n,
            StrengthCoefficientMpa = strengthCoefficientMpa,
            Provenance = new Dictionary<string, Provenance> { ["strainHardening"] = new("caller", Status.Caller) },
        };

    /// <summary>The same, given by its prestrain.</summary>
    /// <param name="modulusMpa">Young's modulus [MPa].</param>
    /// <param name="poisson">Poisson's ratio.</param>
    /// <param name="yieldMpa">Yield stress [MPa].</param>
    /// <param name="n">Exponent n.</param>
    /// <param name="prestrain">eps0.</param>
    public static Material Swift(double modulusMpa, double poisson, double yieldMpa, double n, double prestrain) =>
        Hardening(modulusMpa, poisson, yieldMpa, n, yieldMpa / Math.Pow(prestrain, n));
}
