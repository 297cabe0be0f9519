namespace Forming.Drawing.Sheets;

/// <summary>A part of the sheet that can be shown alone, by its name; nothing is drawn for it.</summary>
/// <param name="Name">Its name, one a sheet.</param>
/// <param name="TopLeft">Upper left corner [mm].</param>
/// <param name="BottomRight">Lower right corner [mm].</param>
internal sealed record View(string Name, Point TopLeft, Point BottomRight) : SheetItem
{
    /// <inheritdoc/>
    public override SheetItem Moved(Point by) => this with { TopLeft = TopLeft + by, BottomRight = BottomRight + by };

    /// <inheritdoc/>
    public override SheetItem Scaled(double factor) => this with { TopLeft = factor * TopLeft, BottomRight = factor * BottomRight };
}
