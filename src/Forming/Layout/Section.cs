namespace Forming.Layout;

/// <summary>The form in section: contact side down, lead-in flat along the x axis, tangent point of the curve at (0, 0).</summary>
/// <param name="Vertices">[folds + 2] contact-side outline: end of the lead-in, every mold line, end of the lead-out [mm].</param>
/// <param name="ContactCurve">[n] points of the smooth contact curve [mm].</param>
/// <param name="InsideProfile">[2 folds + 2] inside face, tangent line to tangent line, for ribs and bulkheads [mm].</param>
public sealed record Section(
    IReadOnlyList<Point> Vertices,
    IReadOnlyList<Point> ContactCurve,
    IReadOnlyList<Point> InsideProfile);
