namespace Forming.Jobs;

/// <summary>The brake.</summary>
public sealed record BrakeSpec
{
    /// <summary>Narrowest facet where the brake states none [mm].</summary>
    public const double DefaultMinFacetMm = 8;

    /// <summary>Step of the stop where the brake states none [°].</summary>
    public const double DefaultStopResolutionDegrees = 0.5;

    /// <summary>No brake swings a fold as far as this.</summary>
    public static Angle HalfTurn { get; } = new(Math.PI);

    /// <summary>Kind of brake.</summary>
    public BrakeKind Kind { get; init; } = BrakeKind.Leaf;

    /// <summary>Longest fold [mm], &gt; 0.</summary>
    public required double LengthMm { get; init; }

    /// <summary>Narrowest facet it can fold [mm], &gt; 0.</summary>
    public double MinFacetMm { get; init; } = DefaultMinFacetMm;

    /// <summary>Smallest step of the angle stop [rad], &gt; 0.</summary>
    public Angle StopResolution { get; init; } = Angle.FromDegrees(DefaultStopResolutionDegrees);

    /// <summary>Nose to where the leaf bears [mm]; null takes half the die opening where there is one, else 12 mm.</summary>
    public double? ReachMm { get; init; }

    /// <summary>Opening of the die [mm], press brakes only.</summary>
    public double? DieOpeningMm { get; init; }

    /// <summary>What the brake is rated for, or null where it states nothing.</summary>
    public BrakeCapacity? Capacity { get; init; }
}

/// <summary>Kinds of brake.</summary>
public enum BrakeKind
{
    /// <summary>A leaf brake: a beam clamps, a leaf swings.</summary>
    Leaf,

    /// <summary>A press brake: a punch presses into a die.</summary>
    Press,
}

/// <summary>The sheet that a brake is rated for over its full length.</summary>
/// <param name="ThicknessMm">Rated thickness [mm], &gt; 0.</param>
/// <param name="UltimateMpa">Ultimate strength of the sheet it is rated with [MPa], &gt; 0.</param>
public sealed record BrakeCapacity(double ThicknessMm, double UltimateMpa);
