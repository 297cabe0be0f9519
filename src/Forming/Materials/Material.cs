namespace Forming.Materials;

/// <summary>A sheet material: nominal properties at room temperature, each with its source.</summary>
public sealed record Material
{
    /// <summary>Stable id such as <c>ss-304</c>; <c>custom</c> where the caller gave the properties.</summary>
    public required string Id { get; init; }

    /// <summary>Name in words.</summary>
    public required string Name { get; init; }

    /// <summary>Other names it goes by.</summary>
    public IReadOnlyList<string> Aliases { get; init; } = [];

    /// <summary>Metal family, which decides the cautions.</summary>
    public required MetalFamily Family { get; init; }

    /// <summary>Young's modulus [MPa], &gt; 0.</summary>
    public required double YoungsModulusMpa { get; init; }

    /// <summary>Poisson's ratio, 0 to below 0.5.</summary>
    public required double PoissonRatio { get; init; }

    /// <summary>Yield stress, 0.2 % proof [MPa], &gt; 0.</summary>
    public required double YieldMpa { get; init; }

    /// <summary>Ultimate tensile strength [MPa], &gt; 0.</summary>
    public required double UltimateMpa { get; init; }

    /// <summary>Total elongation [%], or null where unknown.</summary>
    public double? ElongationPercent { get; init; }

    /// <summary>Strength coefficient K of the flow curve [MPa], or null where unknown.</summary>
    public double? StrengthCoefficientMpa { get; init; }

    /// <summary>Strain-hardening exponent n, dimensionless, or null where unknown.</summary>
    public double? StrainHardening { get; init; }

    /// <summary>Density [kg/m³], &gt; 0.</summary>
    public required double DensityKgPerCubicMetre { get; init; }

    /// <summary>Smallest inside bend radius over thickness, across the grain, 90°, dimensionless, at least 0.</summary>
    public required double MinRadiusOverThickness { get; init; }

    /// <summary>The gauge system this sheet is ordered by, or null where it is ordered by thickness.</summary>
    public string? GaugeSystem { get; init; }

    /// <summary>Cautions that come with the metal, in words.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>Remarks on the row.</summary>
    public string Notes { get; init; } = "";

    /// <summary>Source and status of every property, by contract field name (<c>yield</c>, <c>youngsModulus</c> …).</summary>
    public IReadOnlyDictionary<string, Provenance> Provenance { get; init; } = new Dictionary<string, Provenance>();

    /// <summary>What qualifies single values (the table read, the limits of a standard), by contract field name; few have one.</summary>
    public IReadOnlyDictionary<string, string> ProvenanceNotes { get; init; } = new Dictionary<string, string>();
}

/// <summary>Families of sheet metal that share their dangers.</summary>
public enum MetalFamily
{
    /// <summary>Not known: the caller's own material.</summary>
    Other,

    /// <summary>Aluminium alloys.</summary>
    Aluminium,

    /// <summary>Uncoated carbon and low-alloy steels.</summary>
    Steel,

    /// <summary>Zinc-coated steel.</summary>
    GalvanizedSteel,

    /// <summary>Stainless steels.</summary>
    Stainless,

    /// <summary>Copper.</summary>
    Copper,

    /// <summary>Brass.</summary>
    Brass,

    /// <summary>Titanium.</summary>
    Titanium,

    /// <summary>Magnesium.</summary>
    Magnesium,
}

/// <summary>A sheet: a material in one thickness.</summary>
/// <param name="Material">The material.</param>
/// <param name="ThicknessMm">Thickness [mm], &gt; 0.</param>
public sealed record Sheet(Material Material, double ThicknessMm);
