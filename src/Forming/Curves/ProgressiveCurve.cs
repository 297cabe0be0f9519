namespace Forming.Curves;

/// <summary>A bend whose radius opens or closes steadily.</summary>
/// <param name="StartRadiusMm">Radius at the start on the measured face [mm], &gt; 0; null is flat, clothoid only.</param>
/// <param name="EndRadiusMm">Radius at the end on the measured face [mm], &gt; 0; null is flat, clothoid only.</param>
/// <param name="Sweep">Turned angle.</param>
/// <param name="Law">How the radius goes from one to the other.</param>
public sealed record ProgressiveCurve(double? StartRadiusMm, double? EndRadiusMm, Angle Sweep, ProgressiveLaw Law) : PanelCurve;
