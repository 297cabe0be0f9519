namespace Forming.Drawing.Sheets;

/// <summary>Something on a sheet. Sheet frame: mm, x to the right, y down.</summary>
internal abstract record SheetItem
{
    /// <summary>The same thing elsewhere.</summary>
    /// <param name="by">How far.</param>
    public abstract SheetItem Moved(Point by);

    /// <summary>The same thing larger or smaller, its line widths left alone.</summary>
    /// <param name="factor">How much, &gt; 0.</param>
    public abstract SheetItem Scaled(double factor);
}

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

/// <summary>The three tones of a sheet.</summary>
internal enum Tone
{
    /// <summary>Black.</summary>
    Ink,

    /// <summary>White, on black.</summary>
    Paper,

    /// <summary>Light grey, behind everything else.</summary>
    Ghost,
}

/// <summary>A part of a sheet that stays together: its own frame, top left at (0, 0), as wide as the sheet.</summary>
/// <param name="HeightMm">Its height [mm].</param>
/// <param name="Items">What is drawn.</param>
/// <param name="GapMm">Room above it [mm].</param>
/// <param name="StaysWithNext">Whether it must not end a page, as a heading.</param>
/// <param name="Split">Parts it at a height, each part whole in itself, or null where that leaves too little of either; null where it cannot
/// be parted.</param>
internal sealed record Block(
    double HeightMm,
    IReadOnlyList<SheetItem> Items,
    double GapMm = 5,
    bool StaysWithNext = false,
    Func<double, (Block Head, Block Tail)?>? Split = null);
