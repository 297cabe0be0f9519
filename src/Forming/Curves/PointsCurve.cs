namespace Forming.Curves;

/// <summary>Measured offsets along a pattern.</summary>
/// <param name="Points">At least four points (x, y) [mm], in order along the curve.</param>
/// <param name="ToleranceMm">How far the fitted curve may miss a point [mm], &gt; 0.</param>
public sealed record PointsCurve(IReadOnlyList<Point> Points, double ToleranceMm) : PanelCurve;
