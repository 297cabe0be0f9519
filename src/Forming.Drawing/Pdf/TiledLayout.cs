using System.Globalization;
using Forming.Drawing.Blocks;
using Forming.Drawing.Parts;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Pdf;

/// <summary>One page: what is drawn, in mm of paper.</summary>
/// <param name="Items">What is drawn.</param>
/// <param name="LineScale">Line widths over those of a sheet.</param>
/// <param name="Paper">The paper, where it is not the document's.</param>
internal sealed record PdfPageLayout(IReadOnlyList<SheetItem> Items, double LineScale = 1, Paper? Paper = null);

/// <summary>A part at 1:1 over pages that overlap: rows A, B … down, columns 1, 2 … to the right.</summary>
internal sealed class TiledLayout
{
    /// <summary>Neighbouring pages show this much of each other, so that mark lies on mark [mm].</summary>
    private const double Overlap = 10;

    private const double Head = 18;
    private const double Scale = 9;

    // Fold lines 0.25 mm, edges 0.38 mm: thin enough to mark by.
    private const double LineScale = 5.0 / 6;

    /// <summary>Past this many pages only the two edges of a straight blank are laid out: its lines are straight between them.</summary>
    private const int MostPages = 24;

    /// <summary>A template lies as well askew [°].</summary>
    private static readonly double[] Turns = [.. Enumerable.Range(1, 23).Select(i => 15.0 * i)];

    private readonly DrawingJob _job;
    private readonly FlatPart _part;
    private readonly Paper _paper;
    private readonly PartTiles _tiles;
    private readonly double _high;
    private readonly double _wide;
    private readonly int _rows;
    private readonly int _columns;

    private TiledLayout(DrawingJob job, FlatPart part, Paper paper, double turnDegrees = 0)
    {
        (_job, _part, _paper, _tiles) = (job, part, paper, PartTiles.Of(part, turnDegrees));
        _wide = paper.InnerWidth - Overlap;
        _high = paper.InnerHeight - Head - Scale - Overlap;
        _rows = Count(_tiles.Most.Y, _high);
        _columns = part.LabelsBeside ? 1 : Count(_tiles.Most.X, _wide);
    }

    private bool IsEdgesOnly =>
        _job.Plan.Taper is null && _part.RunsDown && !_part.LabelsBeside && _rows * _columns > MostPages && _columns > 2;

    /// <summary>Lays the pages out, upright, on their sides or with the part turned, whichever takes the fewest.</summary>
    /// <param name="job">The job.</param>
    /// <param name="part">The part.</param>
    /// <param name="paper">The paper, upright.</param>
    public static IEnumerable<PdfPageLayout> Of(DrawingJob job, FlatPart part, Paper paper)
    {
        IEnumerable<TiledLayout> ways = [new(job, part, paper), new(job, part, paper.Turned)];
        if (!part.RunsDown)
            ways = ways.Concat(Turns.Select(turn => new TiledLayout(job, part, paper, turn)));
        var fewest = ways.GroupBy(way => way.Places().Count()).MinBy(group => group.Key)!;
        return (fewest.FirstOrDefault(way => way.HasRoomForSquare()) ?? fewest.First()).Pages();
    }

    private static int Count(double length, double pitch) => Math.Max(1, (int)Math.Ceiling((length - Overlap) / pitch));

    // Pages that would be empty are left out.
    private IEnumerable<(int Row, int Column)> Places() =>
        from column in Enumerable.Range(0, _columns)
        where !IsEdgesOnly || column == 0 || column == _columns - 1
        from row in Enumerable.Range(0, _rows)
        where _tiles.AnyIn(Least(row, column), Most(row, column))
        select (row, column);

    private Point Least(int row, int column) => new(column * _wide, row * _high);

    private Point Most(int row, int column) => Least(row, column) + new Point(_wide + Overlap, _high + Overlap);

    private IEnumerable<PdfPageLayout> Pages()
    {
        var hasSquare = false;
        foreach (var (row, column) in Places())
        {
            var sketch = Tile(row, column);
            if (!hasSquare && FreeOn(sketch) is { } free)
            {
                PartSketch.Square(sketch, _job, free);
                hasSquare = true;
            }

            yield return new(sketch.Items, LineScale, _paper);
        }

        if (!hasSquare)
            yield return new(SquarePage(), LineScale, _paper);
    }

    private bool HasRoomForSquare() => Places().Any(place => FreeOn(Tile(place.Row, place.Column)) is not null);

    private Point? FreeOn(Sketch page) => FreePlace.For(page.Items, PartSketch.SquareMm(_job), TopLeft, BottomRight);

    private static Point TopLeft => new(Paper.Margin, Paper.Margin + Head);

    private Point BottomRight => TopLeft + new Point(_wide + Overlap, _high + Overlap);

    private Sketch Tile(int row, int column)
    {
        var sketch = new Sketch();
        sketch.Add(SheetComposer.Ghosts(_job, _paper.InnerWidth, _paper.InnerHeight), new(Paper.Margin, Paper.Margin));
        Point least = Least(row, column), most = Most(row, column);
        _tiles.Draw(sketch, least, most, TopLeft - least);
        LineLabels.Draw(sketch, [.. _tiles.Shown(least, most, TopLeft - least)], TopLeft, BottomRight, _part.LabelsBeside);
        Crosses(sketch, row, column);
        Heading(sketch, row, column);
        CheckScale(sketch);
        sketch.Add(SheetPages.Foot(_job, _paper, $"1:1, page {Name(row, column)}"), Point.Origin);
        return sketch;
    }

    private IReadOnlyList<SheetItem> SquarePage()
    {
        var sketch = new Sketch();
        sketch.Write(Paper.Margin, Paper.Margin + 3, $"{_part.Name} 1:1, check of the printer", 3.4, isBold: true);
        PartSketch.Square(sketch, _job, TopLeft);
        CheckScale(sketch);
        sketch.Add(SheetPages.Foot(_job, _paper, "1:1, check"), Point.Origin);
        return sketch.Items;
    }

    // A cross at every place where four pages meet; neighbours show the same one.
    private void Crosses(Sketch sketch, int row, int column)
    {
        if (_rows * _columns == 1)
            return;
        for (var i = row; i <= row + 1; i++)
        {
            for (var j = column; j <= column + 1; j++)
            {
                var at = new Point(j * _wide, i * _high) + TopLeft - Least(row, column);
                sketch.Line(Pen.Leader, at - new Point(3.5, 0), at + new Point(3.5, 0));
                sketch.Line(Pen.Leader, at - new Point(0, 3.5), at + new Point(0, 3.5));
                sketch.Polygon(Pen.Leader, [.. Enumerable.Range(0, 24).Select(k => at + (2 * Point.Along(k * Math.PI / 12)))]);
            }
        }
    }

    private void Heading(Sketch sketch, int row, int column)
    {
        var y = Paper.Margin + 3;
        var text = $"{_part.Name} 1:1, page {Name(row, column)}";
        if (_rows * _columns > 1)
            text += $" of {Name(0, 0)} to {Name(_rows - 1, _columns - 1)}";
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
        foreach (var line in Paragraph.Lines(_part.About, _paper.InnerWidth, 2.6).Take(2))
            sketch.Write(Paper.Margin, y += 3.4, line, 2.6);
        PartSketch.Legend(sketch, _part, new(Paper.Margin, Paper.Margin + Head - 4.8));
        if (_part.Copies.Count > 0)
            sketch.Write(_paper.Width - Paper.Margin, Paper.Margin + Head - 4.8, $"{_part.Copies.Count} to cut", 2.6, Anchor.End, isBold: true);
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
            $"{PartSketch.Side(_job)}: print at 100 % and measure this line first",
            2.6);
    }

    private static string Name(int row, int column) => $"{Row(row)}{Column(column)}";

    private static string Row(int row) => row < 26 ? $"{(char)('A' + row)}" : $"{Row((row / 26) - 1)}{(char)('A' + (row % 26))}";

    private static string Column(int column) => (column + 1).ToString(CultureInfo.InvariantCulture);
}
