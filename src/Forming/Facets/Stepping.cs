namespace Forming.Facets;

/// <summary>Where the folds go, and what the caller fixed; at most one of the three fixed figures is given.</summary>
public sealed record Stepping
{
    /// <summary>The rule.</summary>
    public SteppingRule Rule { get; init; } = SteppingRule.EqualAngle;

    /// <summary>Half or full folds at the ends.</summary>
    public SteppingEnds Ends { get; init; } = SteppingEnds.Half;

    /// <summary>Fixed number of folds, or null.</summary>
    public int? Folds { get; init; }

    /// <summary>Fixed fold angle, equal-angle rule only, or null.</summary>
    public Angle? FoldAngle { get; init; }

    /// <summary>Fixed distance between fold centre lines on the flat [mm], equal-spacing rule only, or null.</summary>
    public double? SpacingMm { get; init; }

    /// <summary>Whether the count is refined by the predicted ripple; fewest-folds rule only, nothing fixed.</summary>
    public bool Refine { get; init; }

    /// <summary>Widest facet the caller wants [mm], or null.</summary>
    public double? MaxFacetMm { get; init; }

    /// <summary>The same with no facet wider than a length, unless the caller's own limit is narrower.</summary>
    /// <param name="mm">The length [mm].</param>
    public Stepping NoWiderThan(double mm) => this with { MaxFacetMm = Math.Min(mm, MaxFacetMm ?? mm) };
}
