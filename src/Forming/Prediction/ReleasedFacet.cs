namespace Forming.Prediction;

/// <summary>What a facet left in the panel.</summary>
/// <param name="Number">Number of the fold before it, from 1.</param>
/// <param name="RippleMm">Peak to valley from the facet's own smooth arc [mm].</param>
/// <param name="Slope">Largest angle between the panel and that arc.</param>
/// <param name="MeanCurvature">Mean curvature left in the mid surface [1/mm].</param>
public readonly record struct ReleasedFacet(int Number, double RippleMm, Angle Slope, double MeanCurvature);
