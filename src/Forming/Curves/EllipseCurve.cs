namespace Forming.Curves;

/// <summary>Part of an ellipse, from one outward normal to another.</summary>
/// <param name="SemiAxisXMm">Semi-axis along x on the measured face [mm], &gt; 0.</param>
/// <param name="SemiAxisYMm">Semi-axis along y on the measured face [mm], &gt; 0.</param>
/// <param name="FromNormal">Outward normal's angle from the x axis at the start.</param>
/// <param name="ToNormal">Outward normal's angle from the x axis at the end.</param>
public sealed record EllipseCurve(double SemiAxisXMm, double SemiAxisYMm, Angle FromNormal, Angle ToNormal) : PanelCurve;
