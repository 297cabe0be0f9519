namespace Forming.Facets;

/// <summary>Where the folds go, and what the caller fixed; at most one of the three fixed values is given.</summary>
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

    /// <summary>With how much confidence every facet is to pass the finish, 0.5 to 0.99; nothing fixed, solved on the wrap only.</summary>
    public double Confidence { get; init; } = LeastConfidence;

    /// <summary>An even chance: the nominal panel passes.</summary>
    public const double LeastConfidence = 0.5;

    /// <summary>Widest facet the caller wants [mm], or null.</summary>
    public double? MaxFacetMm { get; init; }

    /// <summary>The same with no facet wider than a length, unless the caller's own limit is narrower.</summary>
    /// <param name="mm">The length [mm].</param>
    public Stepping NoWiderThan(double mm) => this with { MaxFacetMm = Math.Min(mm, MaxFacetMm ?? mm) };
}

/// <summary>Rules for spreading folds along a curve.</summary>
public enum SteppingRule
{
    /// <summary>Folds spread evenly over the turned angle: one stop setting.</summary>
    EqualAngle,

    /// <summary>Folds spread evenly over the flat blank: one divider setting.</summary>
    EqualSpacing,

    /// <summary>Folds as far apart as the finish allows everywhere.</summary>
    FewestFolds,
}

/// <summary>How the first and last fold sit at the ends of a curve.</summary>
public enum SteppingEnds
{
    /// <summary>A fold of about half the angle at each tangent point; the flats are tangent to the curve.</summary>
    Half,

    /// <summary>All folds alike, half a step in from the tangent points; the flats lie a little inside.</summary>
    Full,
}
