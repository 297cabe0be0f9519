namespace Forming.Panels;

/// <summary>A registration mark on the flat panel blank.</summary>
/// <param name="Name">What it is.</param>
/// <param name="AtMm">From the lead-in edge of the blank [mm].</param>
public sealed record PanelMark(string Name, double AtMm);
