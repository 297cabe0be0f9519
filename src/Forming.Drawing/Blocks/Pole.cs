using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>One line across a blank and the row of values it leads to.</summary>
/// <param name="Line">The line [mm of the blank].</param>
/// <param name="Cells">Values, column by column.</param>
/// <param name="Station">Number of the station, or null.</param>
internal sealed record PoleRow(Segment Line, IReadOnlyList<string> Cells, int? Station = null);

/// <summary>A column of values beside a blank.</summary>
/// <param name="Heading">What it holds.</param>
/// <param name="AtMm">Where its text is anchored [mm].</param>
/// <param name="Anchor">How.</param>
/// <param name="IsBold">Whether it is bold.</param>
/// <param name="SizeMm">Size of the type [mm].</param>
/// <param name="Group">What it and its neighbours of the same group hold, written above the last of them; null for none.</param>
internal sealed record PoleColumn(
    string Heading, double AtMm, Anchor Anchor = Anchor.End, bool IsBold = false, double SizeMm = Page.Text, string? Group = null)
{
    /// <summary>Room for the line of groups above the headings; none where no column has one [mm].</summary>
    /// <param name="columns">The columns.</param>
    public static double GroupsHeight(IReadOnlyList<PoleColumn> columns) =>
        columns.Any(column => column.Group is not null) ? Page.SmallLine : 0;

    /// <summary>Writes headings, and above them what the columns of a group share.</summary>
    /// <param name="sketch">What to write in.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="y">Baseline of the headings [mm].</param>
    public static void WriteHeadings(Sketch sketch, IReadOnlyList<PoleColumn> columns, double y)
    {
        for (var i = 0; i < columns.Count; i++)
        {
            var column = columns[i];
            sketch.Write(column.AtMm, y, column.Heading, Page.Small, column.Anchor, isBold: true);
            if (column.Group is { } group && (i + 1 == columns.Count || columns[i + 1].Group != group))
                sketch.Write(column.AtMm, y - Page.SmallLine, group, Page.Small, column.Anchor, isBold: true);
        }
    }
}

/// <summary>A stretch of a blank drawn upright, its length running down, with a row of values led out from every line.</summary>
/// <remarks>Rows of level text stay legible at any number of folds, where ordinates crowded along an edge would not.</remarks>
internal sealed class Pole
{
    /// <summary>Right edge of the blank.</summary>
    public const double BlankWidth = 44;

    private const double LeaderEnd = 57;
    private const double TableHead = 5.5;
    private const double LeastHeight = 34;

    private readonly Sketch _sketch;
    private readonly double _from;
    private readonly double _scale;
    private readonly double _width;
    private readonly double _top;

    private Pole(Sketch sketch, double from, double scale, double width, double top) =>
        (_sketch, _from, _scale, _width, _top) = (sketch, from, scale, width, top);

    /// <summary>Draws a stretch of a blank and its rows.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="top">Upper edge of the drawing [mm].</param>
    /// <param name="stretch">From and to where the blank is shown [mm of the blank].</param>
    /// <param name="widthMm">Width of the blank [mm].</param>
    /// <param name="columns">The columns.</param>
    /// <param name="rows">The rows, in order down the blank.</param>
    /// <param name="lines">Draws the blank and its lines.</param>
    /// <param name="leastHeight">Least height of the blank on the sheet [mm].</param>
    /// <returns>Lower edge of the drawing [mm].</returns>
    public static double Draw(
        Sketch sketch,
        double top,
        (double From, double To) stretch,
        double widthMm,
        IReadOnlyList<PoleColumn> columns,
        IReadOnlyList<PoleRow> rows,
        Action<Pole> lines,
        double leastHeight = 0)
    {
        top += TableHead + PoleColumn.GroupsHeight(columns);
        var height = Math.Max(Math.Max(LeastHeight, leastHeight), rows.Count * Page.Row);
        var pole = new Pole(sketch, stretch.From, height / (stretch.To - stretch.From), widthMm, top);
        lines(pole);
        PoleColumn.WriteHeadings(sketch, columns, top - 2.2);
        sketch.Line(Pen.Leader, new(LeaderEnd + 1, top - 1), new(Page.Width, top - 1));
        var half = Page.Row / 2;
        var places = LabelSpacing.Apart(
            [.. rows.Select(row => pole.Down(row.Line.CrossingAt(widthMm)))], Page.Row, top + half, top + height - half);
        for (var i = 0; i < rows.Count; i++)
            pole.Row(rows[i], places[i], columns);
        return top + height;
    }

    /// <summary>Names the edge above a blank, and its long edges where they differ.</summary>
    /// <param name="sketch">What to write in.</param>
    /// <param name="y">Baseline [mm].</param>
    /// <param name="name">Name of the upper edge.</param>
    /// <param name="hasSides">Whether left and right differ.</param>
    public static void NameUpperEdge(Sketch sketch, double y, string name, bool hasSides)
    {
        sketch.Write(BlankWidth / 2, y, name, Page.Small, Anchor.Middle);
        if (!hasSides)
            return;
        sketch.Write(0, y, "left", Page.Small, isBold: true);
        sketch.Write(BlankWidth, y, "right", Page.Small, Anchor.End, isBold: true);
    }

    /// <summary>A point of the blank on the sheet.</summary>
    /// <param name="point">x along the blank, y across it [mm of the blank].</param>
    public Point At(Point point) => new(point.Y * BlankWidth / _width, Down(point.X));

    /// <summary>Draws a line across the blank.</summary>
    /// <param name="pen">Kind of line.</param>
    /// <param name="line">The line.</param>
    public void Across(Pen pen, Segment line) => _sketch.Line(pen, At(line.Start), At(line.End));

    /// <summary>Draws a line on from the cut edges to the long edges of the straight-edged sheet, where it is marked.</summary>
    /// <param name="pen">Kind of line.</param>
    /// <param name="line">The line.</param>
    public void OnToTheEdges(Pen pen, Segment line)
    {
        Across(pen, new(new(line.CrossingAt(0), 0), line.Start));
        Across(pen, new(line.End, new(line.CrossingAt(_width), _width)));
    }

    /// <summary>Draws the straight-edged sheet that a tapered blank is cut from.</summary>
    /// <param name="from">Where it begins along the blank [mm].</param>
    /// <param name="to">Where it ends [mm].</param>
    public void StraightEdges(double from, double to)
    {
        Across(Pen.Leader, new(new(from, 0), new(from, _width)));
        Across(Pen.Leader, new(new(to, 0), new(to, _width)));
        Across(Pen.Leader, new(new(from, 0), new(to, 0)));
        Across(Pen.Leader, new(new(from, _width), new(to, _width)));
    }

    /// <summary>Draws an outline, or a part of one.</summary>
    /// <param name="points">[n] corners [mm of the blank].</param>
    public void Outline(IEnumerable<Point> points) => _sketch.Line(Pen.Outline, [.. points.Select(At)]);

    /// <summary>Distance on the sheet of two places along the blank.</summary>
    /// <param name="mm">Distance along the blank [mm].</param>
    public double OnSheet(double mm) => Math.Abs(mm) * _scale;

    private double Down(double along) => _top + ((along - _from) * _scale);

    private void Row(PoleRow row, double y, IReadOnlyList<PoleColumn> columns)
    {
        // A line that ends short of the straight edge is drawn on to it.
        var at = Down(row.Line.CrossingAt(_width));
        if (row.Line.End.Y < _width)
            _sketch.Line(Pen.Leader, At(row.Line.End), new(BlankWidth, at));
        _sketch.Line(Pen.Leader, [new(BlankWidth, at), new(BlankWidth + 3, at), new(LeaderEnd - 3, y), new(LeaderEnd, y)]);
        for (var i = 0; i < columns.Count; i++)
        {
            _sketch.Write(new Label(
                new(columns[i].AtMm, y + (0.36 * Page.Text)),
                row.Cells[i],
                columns[i].SizeMm,
                columns[i].Anchor,
                columns[i].IsBold,
                Station: i == 0 ? row.Station : null));
        }
    }
}
