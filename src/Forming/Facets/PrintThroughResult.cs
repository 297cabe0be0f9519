namespace Forming.Facets;

/// <summary>How much of the facets will show.</summary>
/// <param name="Known">Whether the prediction holds; false never means smooth.</param>
/// <param name="WhyUnknown">Why it is not known, or null.</param>
/// <param name="WidestFacetMm">Widest facet on a curved span [mm].</param>
/// <param name="NearestFacetMm">The facet that comes nearest to its limit [mm], or null where not known.</param>
/// <param name="AllowedFacetMm">How wide that very facet might be [mm]; null where not known or where nothing would show.</param>
/// <param name="RippleMm">Peak-to-valley height of that facet [mm], or null where not known.</param>
/// <param name="Slope">Slope of that facet against the smooth curve, or null where not known.</param>
/// <param name="Allowed">The limits in force.</param>
public sealed record PrintThroughResult(
    bool Known,
    string? WhyUnknown,
    double WidestFacetMm,
    double? NearestFacetMm,
    double? AllowedFacetMm,
    double? RippleMm,
    Angle? Slope,
    Finish Allowed);
