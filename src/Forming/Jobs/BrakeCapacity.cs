namespace Forming.Jobs;

/// <summary>The sheet that a brake is rated for over its full length.</summary>
/// <param name="ThicknessMm">Rated thickness [mm], &gt; 0.</param>
/// <param name="UltimateMpa">Ultimate strength of the sheet it is rated with [MPa], &gt; 0.</param>
public sealed record BrakeCapacity(double ThicknessMm, double UltimateMpa);
