namespace Forming.Facets;

/// <summary>What one facet leaves in the finished panel.</summary>
/// <param name="HeightMm">Peak-to-valley height from the facet's own smooth arc [mm].</param>
/// <param name="Slope">Largest slope against it.</param>
public readonly record struct Ripple(double HeightMm, Angle Slope)
{
    /// <summary>The same facet where it shows more.</summary>
    /// <param name="factor">How much more, dimensionless.</param>
    public Ripple Times(double factor) => new(factor * HeightMm, factor * Slope);

    /// <summary>Whether it passes a finish.</summary>
    /// <param name="finish">The limits.</param>
    public bool Passes(Finish finish) => HeightMm <= finish.RippleMm && Slope <= finish.Slope;
}
