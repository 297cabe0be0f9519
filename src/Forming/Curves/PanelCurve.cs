namespace Forming.Curves;

/// <summary>A finished curve: starts at (0, 0) heading +x and turns left.</summary>
public abstract record PanelCurve;

/// <summary>A flat between bends; only inside a chain of segments.</summary>
/// <param name="LengthMm">Length [mm], &gt; 0.</param>
public sealed record FlatCurve(double LengthMm) : PanelCurve;

/// <summary>A bend of constant radius.</summary>
/// <param name="RadiusMm">Radius on the measured face [mm], &gt; 0.</param>
/// <param name="Sweep">Turned angle; negative turns right and is refused.</param>
public sealed record ArcCurve(double RadiusMm, Angle Sweep) : PanelCurve;

/// <summary>A bend whose radius opens or closes steadily.</summary>
/// <param name="StartRadiusMm">Radius at the start on the measured face [mm], &gt; 0; null is flat, clothoid only.</param>
/// <param name="EndRadiusMm">Radius at the end on the measured face [mm], &gt; 0; null is flat, clothoid only.</param>
/// <param name="Sweep">Turned angle.</param>
/// <param name="Law">How the radius goes from one to the other.</param>
public sealed record ProgressiveCurve(double? StartRadiusMm, double? EndRadiusMm, Angle Sweep, ProgressiveLaw Law) : PanelCurve;

/// <summary>How the radius goes from one end of a progressive bend to the other.</summary>
public enum ProgressiveLaw
{
    /// <summary>Radius linear in the turned angle.</summary>
    Involute,

    /// <summary>Curvature linear in the length; one end may be flat.</summary>
    Clothoid,

    /// <summary>Radius exponential in the turned angle.</summary>
    Logarithmic,
}

/// <summary>Part of an ellipse, from one outward normal to another.</summary>
/// <param name="SemiAxisXMm">Semi-axis along x on the measured face [mm], &gt; 0.</param>
/// <param name="SemiAxisYMm">Semi-axis along y on the measured face [mm], &gt; 0.</param>
/// <param name="FromNormal">Outward normal's angle from the x axis at the start.</param>
/// <param name="ToNormal">Outward normal's angle from the x axis at the end.</param>
public sealed record EllipseCurve(double SemiAxisXMm, double SemiAxisYMm, Angle FromNormal, Angle ToNormal) : PanelCurve;

/// <summary>Measured offsets along a pattern.</summary>
/// <param name="Points">At least four points (x, y) [mm], in order along the curve.</param>
/// <param name="ToleranceMm">How far the fitted curve may miss a point [mm], &gt; 0.</param>
public sealed record PointsCurve(IReadOnlyList<Point> Points, double ToleranceMm) : PanelCurve;

/// <summary>A chain of flats and bends, each tangent to the one before.</summary>
/// <param name="Segments">At least one piece; no points and no chains among them.</param>
public sealed record SegmentsCurve(IReadOnlyList<PanelCurve> Segments) : PanelCurve;

/// <summary>A bend between two curves at the near and the far end, of one sweep, in parallel end planes.</summary>
/// <param name="Near">Curve in the near end plane: arc, progressive or ellipse.</param>
/// <param name="Far">Curve in the far end plane: arc, progressive or ellipse.</param>
/// <param name="LengthMm">Distance between the end planes [mm], &gt; 0.</param>
/// <param name="Placement">Where the far curve starts.</param>
/// <param name="Offset">Start of the far curve from that of the near one, for <see cref="TaperPlacement.Offset"/> [mm].</param>
public sealed record TaperCurve(PanelCurve Near, PanelCurve Far, double LengthMm, TaperPlacement Placement, Point Offset) : PanelCurve;

/// <summary>Where the far curve of a taper starts, seen along the folds.</summary>
public enum TaperPlacement
{
    /// <summary>Both curves start from one centre of curvature: two arcs make a right cone.</summary>
    Concentric,

    /// <summary>Both curves start at one point.</summary>
    Flush,

    /// <summary>The caller says.</summary>
    Offset,
}
