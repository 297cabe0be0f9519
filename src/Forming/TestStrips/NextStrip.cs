namespace Forming.TestStrips;

/// <summary>The strip that would tell most next.</summary>
/// <param name="Text">What to bend and why; arguments are <see cref="Results.Figure"/>s.</param>
public sealed record NextStrip(FormattableString Text)
{
    /// <summary>Stop angle to set, or null where it is not the point.</summary>
    public Angle? StopAngle { get; init; }

    /// <summary>Fold angle to aim at, or null where it is not the point.</summary>
    public Angle? FoldAngle { get; init; }

    /// <summary>Radius of the form [mm], or null where it is not the point.</summary>
    public double? FormRadiusMm { get; init; }

    /// <summary>Facet of the form [mm], or null where it is not the point.</summary>
    public double? FacetMm { get; init; }

    /// <summary>Lever to pull at [mm], or null where it is not the point.</summary>
    public double? LeverMm { get; init; }

    /// <summary>Thickness of the strip [mm], or null where it is not the point.</summary>
    public double? ThicknessMm { get; init; }
}
