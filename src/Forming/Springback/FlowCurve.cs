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

    /// <summary>A curve that misses the proof stress by less than this share stays as it is.</summary>
    private const double ProofKept = 0.08;

    /// <summary>A curve that misses the proof stress by more than this share is replaced; in between the two are blended.</summary>
    private const double ProofReplaced = 0.12;

    /// <summary>A pair whose ultimate strength misses the sheet's by less than this share stays as it is.</summary>
    private const double UltimateKept = 0.12;

    /// <summary>
    /// A pair whose ultimate strength misses the sheet's by more than this share is replaced; in between the two are blended.
    /// </summary>
    private const double UltimateReplaced = 0.15;

    /// <summary>Less elongation than this is no sheet's: a fraction given for percent [%].</summary>
    private const double LeastElongationPercent = 1;

    private const double LeastPrestrain = 1e-9;

    private const double MostPrestrain = 100;

    /// <summary>Whether the curve hardens, so that print-through can be calculated.</summary>
    public bool IsKnown => Hardening > 0;

    /// <summary>How much of it replaces a curve that misses the sheet's strengths, 0 to 1.</summary>
    public double ReplacedShare { get; init; }

    /// <summary>Which of the sheet's strengths the curve that was replaced misses the most.</summary>
    public FlowCurveMiss Misses { get; init; }

    /// <summary>Strength coefficient K [MPa]: the yield stress for a perfectly plastic curve.</summary>
    public double StrengthCoefficientMpa => IsKnown ? YieldMpa * Math.Pow(Prestrain, -Hardening) : YieldMpa;

    /// <summary>
    /// Plastic strain, true, up to which a strip in tension thins evenly; 0 where it necks at once. Source: key <c>considere</c>.
    /// </summary>
    public double UniformStrain => Math.Max(0, Hardening - Prestrain);

    /// <summary>Stress over yield stress at the proof strain, less one: how far the curve misses the proof stress.</summary>
    public double ProofMiss => Hardening > 0 ? Math.Pow(1 + (ProofStrain / Prestrain), Hardening) - 1 : 0;

    /// <summary>Ultimate strength that follows from the curve, the largest load over the first section [MPa].</summary>
    /// <remarks>Considère: <c>K n^n e^(eps0 - n)</c> where n is above eps0, else the yield stress. Source: key <c>considere</c>.</remarks>
    public double UltimateMpa => Hardening > Prestrain
        ? YieldMpa * Math.Pow(Hardening / Prestrain, Hardening) * Math.Exp(Prestrain - Hardening)
        : YieldMpa;

    /// <summary>The flow curve of a material: K and n where they are known and fit its strengths, else estimated.</summary>
    /// <param name="material">The material.</param>
    /// <exception cref="NoSolutionException">
    /// The pair passes through the yield stress at no strain that a sheet could have, or the elongation is a fraction and not in percent.
    /// </exception>
    /// <remarks>
    /// Considère's criterion at the uniform strain eu, taken as half the total elongation (assumption):
    /// <c>eps0 + eu = n</c>, <c>K n^n = ultimate e^eu</c>, <c>K eps0^n = yield</c>. Source: key <c>considere</c>.
    /// As a catalogue pair, or an estimate, misses the proof stress by 8 to 12 % at a plastic strain of 0.002, it is blended into
    /// <c>eps0 = 0.002</c> with the ultimate strength kept; so is a catalogue pair as its ultimate strength misses the sheet's by
    /// 12 to 15 %. Blended, so that no value jumps as a strength changes. The caller's own K and n are used as given.
    /// </remarks>
    public static FlowCurve Of(Material material)
    {
        if (material.ElongationPercent is > 0 and < LeastElongationPercent)
            throw Fraction(material.ElongationPercent.Value);
        if (material is not { StrengthCoefficientMpa: { } k, StrainHardening: { } n })
            return Blend(Considere(material), material, FlowCurveOrigin.EstimateReplaced);
        if (n == 0)
            return Perfect(material);
        var isCallers = material.Provenance.TryGetValue("strainHardening", out var from) && from.Status == Status.Caller;
        var origin = isCallers ? FlowCurveOrigin.Caller : FlowCurveOrigin.Catalogue;
        var given = new FlowCurve(material.YieldMpa, n, Math.Pow(material.YieldMpa / k, 1 / n), origin);
        if (given.Prestrain is >= LeastPrestrain and <= MostPrestrain)
            return isCallers ? given : Blend(given, material, FlowCurveOrigin.CatalogueReplaced);
        if (isCallers)
            throw Unreal(material, n);
        // The caller's own strengths lie far from the table's pair, which then has no part left in the curve.
        return Blend(
            given with { Prestrain = Math.Clamp(given.Prestrain, LeastPrestrain, MostPrestrain) },
            material,
            FlowCurveOrigin.CatalogueReplaced);
    }

    private static FlowCurve Blend(FlowCurve curve, Material material, FlowCurveOrigin replaced)
    {
        var byProof = Share(curve.ProofMiss, ProofKept, ProofReplaced);
        var byUltimate = curve.Origin == FlowCurveOrigin.Catalogue
            ? Share(Math.Abs((curve.UltimateMpa / material.UltimateMpa) - 1), UltimateKept, UltimateReplaced)
            : 0;
        var share = Math.Max(byProof, byUltimate);
        if (share == 0)
            return curve;
        var through = ThroughProof(material);
        if (!through.IsKnown)
            return through;
        return new(
            material.YieldMpa,
            share == 1 ? through.Hardening : curve.Hardening + (share * (through.Hardening - curve.Hardening)),
            share == 1 ? through.Prestrain : curve.Prestrain + (share * (through.Prestrain - curve.Prestrain)),
            replaced)
        {
            ReplacedShare = share,
            Misses = byUltimate > byProof ? FlowCurveMiss.Ultimate : FlowCurveMiss.Proof,
        };
    }

    private static double Share(double miss, double kept, double replaced) => Math.Clamp((miss - kept) / (replaced - kept), 0, 1);

    private static NoSolutionException Fraction(double elongation) => new(
        "material.elongation",
        "panel.material.elongation",
        $"elongation is in percent: 8, not 0.08; {elongation:0.######} % is less than any sheet stretches",
        $"the elongation in percent, at least {LeastElongationPercent}, or none");

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
        var uniform = UniformStrainOf(material);
        var rho = 1 + (Math.Log(material.UltimateMpa / material.YieldMpa) / uniform);
        var y = RobustNewtonRaphson.FindRoot(
            y => y + (rho * (Math.Exp(-y) - 1)), y => 1 - (rho * Math.Exp(-y)), Math.Log(rho), rho, accuracy: 1e-13 * rho);
        var prestrain = Math.Max(LeastPrestrain, uniform / (Math.Exp(y) - 1));
        return new(material.YieldMpa, uniform + prestrain, prestrain, FlowCurveOrigin.Estimated);
    }

    private static FlowCurve ThroughProof(Material material)
    {
        if (material.ElongationPercent is not > 0 || material.UltimateMpa <= material.YieldMpa)
            return Perfect(material);
        var uniform = UniformStrainOf(material);
        var n = (Math.Log(material.UltimateMpa / material.YieldMpa) + uniform) / Math.Log(1 + (uniform / ProofStrain));
        return new(material.YieldMpa, n, ProofStrain, FlowCurveOrigin.EstimateReplaced);
    }

    private static FlowCurve Perfect(Material material) => new(material.YieldMpa, 0, 0, FlowCurveOrigin.Unknown);

    private static double UniformStrainOf(Material material) => material.ElongationPercent!.Value / 200;
}

/// <summary>Where the hardening of a flow curve comes from.</summary>
public enum FlowCurveOrigin
{
    /// <summary>Not known: perfectly plastic.</summary>
    Unknown,

    /// <summary>K and n from the catalogue.</summary>
    Catalogue,

    /// <summary>K and n from the caller, used as given.</summary>
    Caller,

    /// <summary>Estimated from yield, ultimate strength and elongation.</summary>
    Estimated,

    /// <summary>
    /// The catalogue's K and n miss the proof stress or the ultimate strength, and an estimate through both is used, in part or wholly.
    /// </summary>
    CatalogueReplaced,

    /// <summary>The first estimate misses the proof stress, and one through it is used, in part or wholly.</summary>
    EstimateReplaced,
}

/// <summary>Which of a sheet's strengths a flow curve misses.</summary>
public enum FlowCurveMiss
{
    /// <summary>None that matters.</summary>
    None,

    /// <summary>The proof stress.</summary>
    Proof,

    /// <summary>The ultimate strength.</summary>
    Ultimate,
}
