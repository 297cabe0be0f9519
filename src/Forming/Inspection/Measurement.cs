namespace Forming.Inspection;

/// <summary>What was measured on the folded form: fold angles, with facets or spacings where they were taken too, or points of a template.</summary>
public sealed record Measurement
{
    /// <summary>[n] fold angles from the lead-in; null where points were taken.</summary>
    public IReadOnlyList<Angle>? Angles { get; init; }

    /// <summary>[n - 1] distances between neighbouring fold centre lines on the flat blank [mm], or null.</summary>
    public IReadOnlyList<double>? SpacingsMm { get; init; }

    /// <summary>[n - 1] facets on the contact side, mold line to mold line [mm], or null.</summary>
    public IReadOnlyList<double>? FacetsMm { get; init; }

    /// <summary>[n + 1] points along the contact side of every flat, lead-in to lead-out, at least two each [mm]; null where angles were taken.</summary>
    public IReadOnlyList<IReadOnlyList<Point>>? Points { get; init; }
}
