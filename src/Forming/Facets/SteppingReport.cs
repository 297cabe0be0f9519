namespace Forming.Facets;

/// <summary>How evenly the folds came out.</summary>
/// <param name="AngleSpread">Largest less smallest fold angle, end folds of half ends left out.</param>
/// <param name="SpacingSpreadMm">Largest less smallest distance between fold centre lines within a curved span [mm].</param>
/// <param name="SweepOver">Sweep past the wanted one with a fixed angle or spacing; negative is short.</param>
/// <param name="LastFoldInstead">The last fold that would close the sweep exactly, or null where nothing was fixed.</param>
/// <param name="FlatInsideTangentMm">How far the lead-in flat lies inside the curve's tangent, full ends [mm].</param>
public sealed record SteppingReport(
    Angle AngleSpread,
    double SpacingSpreadMm,
    Angle SweepOver,
    Angle? LastFoldInstead,
    double FlatInsideTangentMm)
{
    /// <summary>What came of refining by the predicted ripple, or null where it was not asked for.</summary>
    public SteppingRefinement? Refinement { get; init; }
}
