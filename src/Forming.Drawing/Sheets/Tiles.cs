namespace Forming.Drawing.Sheets;

/// <summary>
/// Black squares on a square grid, in runs along its rows, without an outline that would widen them; the grid covers what lies below it.
/// </summary>
/// <param name="At">Upper left corner of the grid [mm].</param>
/// <param name="TileMm">Side of a square [mm].</param>
/// <param name="Count">How many squares a side of the grid has.</param>
/// <param name="Runs">The runs.</param>
internal sealed record Tiles(Point At, double TileMm, int Count, IReadOnlyList<TileRun> Runs) : SheetItem
{
    /// <inheritdoc/>
    public override SheetItem Moved(Point by) => this with { At = At + by };

    /// <inheritdoc/>
    public override SheetItem Scaled(double factor) => this with { At = factor * At, TileMm = factor * TileMm };

    /// <summary>Corners of the grid: upper left, lower right [mm].</summary>
    public (Point TopLeft, Point BottomRight) Whole => (At, At + (Count * TileMm * new Point(1, 1)));

    /// <summary>Corners of a run: upper left, lower right [mm].</summary>
    /// <param name="run">The run.</param>
    public (Point TopLeft, Point BottomRight) Corners(TileRun run) => (
        At + (TileMm * new Point(run.Column, run.Row)),
        At + (TileMm * new Point(run.Column + run.Length, run.Row + 1)));
}

/// <summary>Black squares side by side.</summary>
/// <param name="Row">Their row, from 0 at the top.</param>
/// <param name="Column">Column of the first, from 0 at the left.</param>
/// <param name="Length">How many.</param>
internal readonly record struct TileRun(int Row, int Column, int Length);
