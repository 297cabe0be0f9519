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
