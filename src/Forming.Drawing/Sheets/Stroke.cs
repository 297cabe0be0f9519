namespace Forming.Drawing.Sheets;

/// <summary>A polyline, or a polygon where closed.</summary>
/// <param name="Points">[n] points, n ≥ 2 [mm].</param>
/// <param name="Pen">Kind of line.</param>
/// <param name="IsClosed">Whether the last point joins the first.</param>
/// <param name="Fill">What fills it, or null.</param>
internal sealed record Stroke(IReadOnlyList<Point> Points, Pen Pen, bool IsClosed = false, Tone? Fill = null) : SheetItem
{
    /// <inheritdoc/>
    public override SheetItem Moved(Point by) => this with { Points = [.. Points.Select(point => point + by)] };

    /// <inheritdoc/>
    public override SheetItem Scaled(double factor) => this with { Points = [.. Points.Select(point => factor * point)] };
}
