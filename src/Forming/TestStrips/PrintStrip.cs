namespace Forming.TestStrips;

/// <summary>A strip pulled over facets and looked at.</summary>
/// <param name="FacetMm">Facet of the form on its contact side [mm], &gt; 0.</param>
/// <param name="FormRadiusMm">Radius of the form's contact curve [mm], &gt; 0.</param>
/// <param name="ThicknessMm">Thickness of the strip [mm], &gt; 0.</param>
/// <param name="LeverMm">Touching fold to hand [mm], or null for the one a plan would choose.</param>
/// <param name="IsFirstFacet">Whether the facet looked at is the first after the flat, with a half fold before it.</param>
/// <param name="Shows">Whether the facets show.</param>
public readonly record struct PrintStrip(
    double FacetMm, double FormRadiusMm, double ThicknessMm, double? LeverMm, bool IsFirstFacet, bool Shows);
