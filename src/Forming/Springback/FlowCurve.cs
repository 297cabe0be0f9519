using Forming.Materials;
using Forming.Results;
using MathNet.Numerics.RootFinding;

namespace Forming.Springback;

/// <summary>Flow curve in tension, <c>stress = K (eps0 + plastic strain)^n</c>, through the yield stress at no plastic strain.</summary>
/// <param name="YieldMpa">Yield stress [MPa], &gt; 0.</param>
/// <param name="Hardening">Exponent n, dimensionless, at least 0; 0 is perfectly plastic.</param>
/// <param name="Prestrain">Strain eps0 at yield, dimensionless, &gt; 0 where n &gt; 0.</param>
/// <param name="Origin">Where K and n come from.</param>
public readonly record struct FlowCurve(double YieldMpa, double Hardening, double Prestrain, FlowCurveOrigin Origin)
{
    /// <summary>The proof stress is read at this plastic strain.</summary>
    private const double ProofStrain = 0.002;

    /// <summary>A curve may miss the proof stress by this share before it is replaced.</summary>
    private const double ProofTolerance = 0.10;

    private const double LeastPrestrain = 1e-9;

    private const double MostPrestrain = 100;

    /// <summary>Whether the curve hardens, so that print-through can be told.</summary>
    public bool IsKnown => Hardening > 0;

    /// <summary>Stress over yield stress at the proof strain, less one: how far the curve misses the proof stress.</summary>
    public double ProofMiss => Hardening > 0 ? Math.Pow(1 + (ProofStrain / Prestrain), Hardening) - 1 : 0;

    /// <summary>The flow curve of a material: K and n where they are known and fit the proof stress, else estimated.</summary>
    /// <param name="material">The material.</param>
    /// <remarks>
    /// Considère's criterion at the uniform strain eu, taken as half the total elongation (assumption):
    /// <c>eps0 + eu = n</c>, <c>K n^n = ultimate e^eu</c>, <c>K eps0^n = yield</c>. Source: key <c>considere</c>.
    /// A catalogue pair, or an estimate, that misses the proof stress by more than 10 % at a plastic strain of 0.002 gives way to
    /// <c>eps0 = 0.002</c> with the ultimate strength kept. The caller's own K and n are used as given.
    /// </remarks>
    public static FlowCurve Of(Material material)
    {
        if (material is { StrengthCoefficientMpa: { } k, StrainHardening: { } n })
        {
            if (n == 0)
                return Perfect(material);
            var isCallers = material.Provenance.TryGetValue("strainHardening", out var from) && from.Status == Status.Caller;
            var origin = isCallers ? FlowCurveOrigin.Caller : FlowCurveOrigin.Catalogue;
            var given = new FlowCurve(material.YieldMpa, n, Math.Pow(material.YieldMpa / k, 1 / n), origin);
            if (!(given.Prestrain is >= LeastPrestrain and <= MostPrestrain))
                throw Unreal(material, n);
            return isCallers || given.ProofMiss <= ProofTolerance ? given : ThroughProof(material, FlowCurveOrigin.CatalogueReplaced);
        }

        var estimate = Considere(material);
        return estimate.ProofMiss <= ProofTolerance ? estimate : ThroughProof(material, FlowCurveOrigin.EstimateReplaced);
    }

    private static NoSolutionException Unreal(Material material, double n) => new(
        "material.flow-curve",
        "panel.material.strainHardening",
        $"with n = {n:0.######} the flow curve of {material.Name} passes through its yield stress at no strain that a sheet could have",
        $"a strengthCoefficient of at least the yield stress and a strainHardening of 0.01 or more, or neither");

    private static FlowCurve Considere(Material material)
    {
        if (material.ElongationPercent is not > 0 || material.UltimateMpa <= material.YieldMpa)
            return Perfect(material);

        // With y = ln(n/eps0) the three conditions become y = rho (1 - e^-y), whose root above 0 lies between ln rho and rho.
        var uniform = UniformStrain(material);
        var rho = 1 + (Math.Log(material.UltimateMpa / material.YieldMpa) / uniform);
        var y = RobustNewtonRaphson.FindRoot(
            y => y + (rho * (Math.Exp(-y) - 1)), y => 1 - (rho * Math.Exp(-y)), Math.Log(rho), rho, accuracy: 1e-13 * rho);
        var prestrain = uniform / (Math.Exp(y) - 1);
        return prestrain > 0 && double.IsFinite(prestrain)
            ? new(material.YieldMpa, uniform + prestrain, prestrain, FlowCurveOrigin.Estimated)
            : ThroughProof(material, FlowCurveOrigin.EstimateReplaced);
    }

    private static FlowCurve ThroughProof(Material material, FlowCurveOrigin origin)
    {
        if (material.ElongationPercent is not > 0 || material.UltimateMpa <= material.YieldMpa)
            return Perfect(material);
        var uniform = UniformStrain(material);
        var n = (Math.Log(material.UltimateMpa / material.YieldMpa) + uniform) / Math.Log(1 + (uniform / ProofStrain));
        return n > 0 ? new(material.YieldMpa, n, ProofStrain, origin) : Perfect(material);
    }

    private static FlowCurve Perfect(Material material) => new(material.YieldMpa, 0, 0, FlowCurveOrigin.Unknown);

    private static double UniformStrain(Material material) => material.ElongationPercent!.Value / 200;
}
