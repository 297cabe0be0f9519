namespace Forming.Curves;

/// <summary>A bend of constant radius.</summary>
/// <param name="RadiusMm">Radius on the measured face [mm], &gt; 0.</param>
/// <param name="Sweep">Turned angle; negative turns right and is refused.</param>
public sealed record ArcCurve(double RadiusMm, Angle Sweep) : PanelCurve;
