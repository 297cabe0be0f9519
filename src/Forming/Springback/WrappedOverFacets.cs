namespace Forming.Springback;

/// <summary>Pure bending and the extra set that facets leave.</summary>
public sealed record WrappedOverFacets : SpringbackChoice;
