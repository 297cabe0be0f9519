namespace Forming.Curves;

/// <summary>A chain of flats and bends, each tangent to the one before.</summary>
/// <param name="Segments">At least one piece; no points and no chains among them.</param>
public sealed record SegmentsCurve(IReadOnlyList<PanelCurve> Segments) : PanelCurve;
