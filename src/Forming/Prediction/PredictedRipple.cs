namespace Forming.Prediction;

/// <summary>How much of the facets will show.</summary>
/// <param name="WhyUnknown">Why it cannot be told, or null.</param>
/// <param name="HeightMm">Largest peak-to-valley height [mm], or null where it cannot be told.</param>
/// <param name="Slope">Largest slope against the facets' own smooth arcs, or null where it cannot be told.</param>
/// <param name="Facet">Number of the facet that comes nearest to the limits of the finish, or null where it cannot be told.</param>
public sealed record PredictedRipple(string? WhyUnknown, double? HeightMm, Angle? Slope, int? Facet)
{
    /// <summary>Whether it can be told; false never means smooth.</summary>
    public bool Known => WhyUnknown is null;
}
