namespace Forming.Prediction;

/// <summary>One facet in the panel that was let go.</summary>
/// <param name="Number">Number of the fold before it, from 1.</param>
/// <param name="WidthMm">Facet on the contact side, mold line to mold line [mm].</param>
/// <param name="IsFlatOfCurve">Whether the wanted curve is flat here, so that the facet is no ripple.</param>
/// <param name="RippleMm">Peak to valley from the facet's own smooth arc [mm], or null where it cannot be told.</param>
/// <param name="Slope">Largest angle between the panel and that arc, or null where it cannot be told.</param>
/// <param name="RadiusMm">Mean radius over it on the face the curve was measured on [mm]; null where the panel came off flat.</param>
public sealed record PredictedFacet(int Number, double WidthMm, bool IsFlatOfCurve, double? RippleMm, Angle? Slope, double? RadiusMm);
