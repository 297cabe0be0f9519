namespace Forming.Curves;

/// <summary>A flat between bends; only inside a chain of segments.</summary>
/// <param name="LengthMm">Length [mm], &gt; 0.</param>
public sealed record FlatCurve(double LengthMm) : PanelCurve;
