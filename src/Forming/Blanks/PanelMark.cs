namespace Forming.Blanks;

/// <summary>A registration mark on the flat panel blank.</summary>
/// <param name="Name">What it is.</param>
/// <param name="AtMm">From the lead-in edge of the blank; on a taper, where the line crosses the lower base line [mm].</param>
/// <param name="Near">Near end of the line in the panel's sheet frame, tapers only [mm].</param>
/// <param name="Far">Far end of the line, tapers only [mm].</param>
public sealed record PanelMark(string Name, double AtMm, Point? Near = null, Point? Far = null);
