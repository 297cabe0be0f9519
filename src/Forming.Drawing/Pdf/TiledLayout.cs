using System.Globalization;
using Forming.Drawing.Blocks;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;
using Forming.Layout;

namespace Forming.Drawing.Pdf;

/// <summary>One page: what is drawn, in mm of paper.</summary>
/// <param name="Items">What is drawn.</param>
/// <param name="LineScale">Line widths over those of a sheet.</param>
internal sealed record PdfPageLayout(IReadOnlyList<SheetItem> Items, double LineScale = 1);

/// <summary>The flat form blank at 1:1 over pages that overlap: rows A, B … down its length, columns 1, 2 … across its width.</summary>
internal sealed class TiledLayout
{
    /// <summary>Neighbouring pages show this much of each other, so that mark lies on mark [mm].</summary>
    private const double Overlap = 10;

    private const double Head = 10;
    private const double Scale = 12;
    private const double LineScale = 0.4;

    /// <summary>Room that a fold's label wants along its line [mm].</summary>
    private const double LabelWidth = 80;

    /// <summary>Past this many pages only the two edges are laid out: fold lines are straight between them.</summary>
    private const int MostPages = 24;

    private readonly DrawingJob _job;
    private readonly Paper _paper;
    private readonly FormBlankLines _flat;
    private readonly double _high;
    private readonly double _wide;
    private readonly int _rows;
    private readonly int _columns;

    private TiledLayout(DrawingJob job, Paper paper)
    {
        (_job, _paper, _flat) = (job, paper, FormBlankLines.Of(job).TurnedOver());
        _wide = paper.InnerWidth - Overlap;
        _high = paper.InnerHeight - Head - Scale - Overlap;
        _rows = Count(job.Plan.Form.Blank.LengthMm, _high);
        _columns = Count(job.Plan.Form.Blank.WidthMm, _wide);
    }

    private bool IsEdgesOnly => _job.Plan.Taper is null && _rows * _columns > MostPages && _columns > 2;

    /// <summary>Lays the pages out.</summary>
    /// <param name="job">The job.</param>
    /// <param name="paper">The paper.</param>
    public static IEnumerable<PdfPageLayout> Of(DrawingJob job, Paper paper) => new TiledLayout(job, paper).Pages();

    private static int Count(double length, double pitch) => Math.Max(1, (int)Math.Ceiling((length - Overlap) / pitch));

    private IEnumerable<PdfPageLayout> Pages()
    {
        for (var column = 0; column < _columns; column++)
        {
            if (IsEdgesOnly && column > 0 && column < _columns - 1)
                continue;
            for (var row = 0; row < _rows; row++)
                yield return new(Tile(row, column), LineScale);
        }
    }

    private IReadOnlyList<SheetItem> Tile(int row, int column)
    {
        var sketch = new Sketch();
        sketch.Add(SheetComposer.Ghosts(_job, _paper.InnerWidth, _paper.InnerHeight), new(Paper.Margin, Paper.Margin));
        // The window of the blank, x along its length and y across it, that this page shows.
        var least = new Point(row * _high, column * _wide);
        var most = least + new Point(_high + Overlap, _wide + Overlap);
        var origin = new Point(Paper.Margin, Paper.Margin + Head);
        Blank(sketch, OnPage, least, most);
        Crosses(sketch, OnPage, row, column);
        Heading(sketch, row, column);
        CheckScale(sketch);
        sketch.Add(SheetPages.Foot(_job, _paper, $"1:1, page {Name(row, column)}"), Point.Origin);
        return sketch.Items;

        Point OnPage(Point point) => origin + new Point(point.Y - least.Y, point.X - least.X);
    }

    private void Blank(Sketch sketch, Func<Point, Point> onPage, Point least, Point most)
    {
        for (var i = 1; i < _flat.Outline.Count; i++)
            Line(Pen.Outline, new(_flat.Outline[i - 1], _flat.Outline[i]));
        var bottom = double.NegativeInfinity;
        foreach (var fold in _flat.Folds)
        {
            Line(Pen.Tangent, fold.FirstTangent);
            Line(Pen.Tangent, fold.SecondTangent);
            Line(Pen.Sight, fold.Sight);
            if (Line(Pen.Fold, fold.Fold) is not { } shown)
                continue;
            var along = onPage(shown.End) - onPage(shown.Start);
            if (along.Length < LabelWidth && shown != fold.Fold)
                continue; // the corner of a slanting line; the next page names it
            double[] beside =
            [
                0,
                fold.Fold.DistanceTo(fold.FirstTangent),
                fold.Fold.DistanceTo(fold.SecondTangent),
                fold.Fold.DistanceTo(fold.Sight),
            ];
            var above = beside.Min();
            var place = onPage(shown.Start);
            var size = Math.Clamp(place.Y + above - bottom - 1.4, 1.4, 3.2);
            var at = place + (12 / along.Length * along) + ((above - 0.8) / along.Length * along.Left());
            Text(sketch, fold.Station, at, size, Math.Atan2(along.Y, along.X));
            bottom = place.Y + beside.Max();
        }

        Segment? Line(Pen pen, Segment line)
        {
            if (Clip.Inside(line, least, most) is not { } shown)
                return null;
            sketch.Line(pen, onPage(shown.Start), onPage(shown.End));
            return shown;
        }
    }

    private static void Text(Sketch sketch, Station station, Point at, double size, double turn)
    {
        var degrees = new Angle(turn).Degrees;
        var number = station.Number.ToString(CultureInfo.InvariantCulture);
        var far = station.Line is { } line ? $"left {line.MarkFar.Text}, right " : "mark ";
        sketch.Write(new Label(at, number, size, IsBold: true, TurnDegrees: degrees, Station: station.Number));
        sketch.Write(new Label(
            at + (9 * Point.Along(turn)),
            $"{far}{station.MarkText}, fold {Readout.Degrees(station.FoldAngle)}, stop {Readout.Degrees(station.StopSetting)}",
            size,
            TurnDegrees: degrees));
    }

    // A cross at every place where four pages meet; neighbours show the same one.
    private void Crosses(Sketch sketch, Func<Point, Point> onPage, int row, int column)
    {
        for (var i = row; i <= row + 1; i++)
        {
            for (var j = column; j <= column + 1; j++)
            {
                var at = onPage(new(i * _high, j * _wide));
                sketch.Line(Pen.Leader, at - new Point(3.5, 0), at + new Point(3.5, 0));
                sketch.Line(Pen.Leader, at - new Point(0, 3.5), at + new Point(0, 3.5));
                sketch.Polygon(Pen.Leader, [.. Enumerable.Range(0, 24).Select(k => at + (2 * Point.Along(k * Math.PI / 12)))]);
            }
        }
    }

    private void Heading(Sketch sketch, int row, int column)
    {
        var y = Paper.Margin + 3;
        var text = $"Form blank 1:1, page {Name(row, column)} of {Name(0, 0)} to {Name(_rows - 1, _columns - 1)}";
        if (IsEdgesOnly)
            text += $", both edges only: columns 1 and {Column(_columns - 1)}";
        sketch.Write(Paper.Margin, y, text, 3.4, isBold: true);
        List<string> joins = [];
        if (row > 0)
            joins.Add($"{Name(row - 1, column)} above");
        if (row < _rows - 1)
            joins.Add($"{Name(row + 1, column)} below");
        if (column > 0 && !IsEdgesOnly)
            joins.Add($"{Name(row, column - 1)} left");
        if (column < _columns - 1 && !IsEdgesOnly)
            joins.Add($"{Name(row, column + 1)} right");
        if (joins.Count > 0)
            sketch.Write(_paper.Width - Paper.Margin, y, $"joins {string.Join(", ", joins)}, cross on cross", 2.6, Anchor.End);
    }

    private void CheckScale(Sketch sketch)
    {
        var isInch = _job.Units == LengthUnit.In;
        var step = isInch ? 12.7 : 10;
        var count = isInch ? 8 : 10;
        double x = Paper.Margin, y = _paper.Height - Paper.Margin - Paper.Foot;
        sketch.Line(Pen.Fold, new(x, y), new(x + (count * step), y));
        for (var i = 0; i <= count; i++)
            sketch.Line(Pen.Fold, new(x + (i * step), y), new(x + (i * step), y - (i % count == 0 ? 4 : 2)));
        sketch.Write(
            x + (count * step) + 3,
            y,
            $"{(isInch ? "4 in" : "100 mm")}: print at 100 % and measure this line first",
            2.6);
    }

    private static string Name(int row, int column) => $"{Row(row)}{Column(column)}";

    private static string Row(int row) => row < 26 ? $"{(char)('A' + row)}" : $"{Row((row / 26) - 1)}{(char)('A' + (row % 26))}";

    private static string Column(int column) => (column + 1).ToString(CultureInfo.InvariantCulture);
}
