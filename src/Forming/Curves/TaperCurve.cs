namespace Forming.Curves;

/// <summary>A bend between two curves at the near and the far end, of one sweep, in parallel end planes.</summary>
/// <param name="Near">Curve in the near end plane: arc, progressive or ellipse.</param>
/// <param name="Far">Curve in the far end plane: arc, progressive or ellipse.</param>
/// <param name="LengthMm">Distance between the end planes [mm], &gt; 0.</param>
/// <param name="Placement">Where the far curve starts.</param>
/// <param name="Offset">Start of the far curve from that of the near one, for <see cref="TaperPlacement.Offset"/> [mm].</param>
public sealed record TaperCurve(PanelCurve Near, PanelCurve Far, double LengthMm, TaperPlacement Placement, Point Offset) : PanelCurve;
