namespace Forming.Drawing.Blocks;

/// <summary>Where a section lies on the sheet.</summary>
/// <param name="Origin">The section's (0, 0) on the sheet [mm].</param>
/// <param name="Scale">Sheet over section.</param>
/// <param name="Bottom">Lower edge on the sheet [mm].</param>
internal readonly record struct SectionFrame(Point Origin, double Scale, double Bottom)
{
    /// <summary>A point of the section on the sheet.</summary>
    /// <param name="point">The point, y up [mm].</param>
    public Point At(Point point) => Origin + new Point(Scale * point.X, -Scale * point.Y);
}
