namespace Forming.Pulling;

/// <summary>What it takes to pull the panel around the form.</summary>
/// <param name="MomentPerWidth">Bending moment at the tightest point [N·mm/mm].</param>
/// <param name="LeverMm">Hand to the end of the curve [mm].</param>
/// <param name="LongestLeverMm">Longest lever that keeps the wrap in order [mm]; 0 where none does, null where any does.</param>
/// <param name="ForceN">Largest hand force over the wrap, whole width [N].</param>
/// <param name="ClampLoadN">Hold-down at the clamp, whole width [N].</param>
/// <param name="EnergyReleasedJ">Elastic energy let go when the pull ends [J].</param>
public sealed record Pull(
    double MomentPerWidth,
    double LeverMm,
    double? LongestLeverMm,
    double ForceN,
    double ClampLoadN,
    double EnergyReleasedJ);
