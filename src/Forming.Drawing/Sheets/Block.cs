namespace Forming.Drawing.Sheets;

/// <summary>A part of a sheet that stays together: its own frame, top left at (0, 0), as wide as the sheet.</summary>
/// <param name="HeightMm">Its height [mm].</param>
/// <param name="Items">What is drawn.</param>
/// <param name="GapMm">Room above it [mm].</param>
/// <param name="StaysWithNext">Whether it must not end a page, as a heading.</param>
internal sealed record Block(double HeightMm, IReadOnlyList<SheetItem> Items, double GapMm = 5, bool StaysWithNext = false);
