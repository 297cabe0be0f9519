namespace Forming.Programs.Brakes;

/// <summary>A block of a brake in section.</summary>
/// <param name="WidthMm">Front to back [mm].</param>
/// <param name="HeightMm">Height [mm].</param>
public sealed record ToolSize(double WidthMm, double HeightMm);
