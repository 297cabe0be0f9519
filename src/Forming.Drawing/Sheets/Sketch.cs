namespace Forming.Drawing.Sheets;

/// <summary>Gathers what is drawn in one block.</summary>
internal sealed class Sketch
{
    private readonly List<SheetItem> _items = [];

    /// <summary>What was drawn.</summary>
    public IReadOnlyList<SheetItem> Items => _items;

    /// <summary>Draws a straight line.</summary>
    /// <param name="pen">Kind of line.</param>
    /// <param name="from">One end [mm].</param>
    /// <param name="to">The other end [mm].</param>
    public void Line(Pen pen, Point from, Point to) => _items.Add(new Stroke([from, to], pen));

    /// <summary>Draws a polyline.</summary>
    /// <param name="pen">Kind of line.</param>
    /// <param name="points">[n] points, n ≥ 2 [mm].</param>
    public void Line(Pen pen, IReadOnlyList<Point> points) => _items.Add(new Stroke(points, pen));

    /// <summary>Draws a polygon.</summary>
    /// <param name="pen">Kind of line.</param>
    /// <param name="points">[n] corners [mm].</param>
    /// <param name="fill">What fills it, or null.</param>
    public void Polygon(Pen pen, IReadOnlyList<Point> points, Tone? fill = null) =>
        _items.Add(new Stroke(points, pen, IsClosed: true, fill));

    /// <summary>Draws a rectangle.</summary>
    /// <param name="pen">Kind of line.</param>
    /// <param name="topLeft">Its upper left corner [mm].</param>
    /// <param name="bottomRight">Its lower right corner [mm].</param>
    /// <param name="fill">What fills it, or null.</param>
    public void Rectangle(Pen pen, Point topLeft, Point bottomRight, Tone? fill = null) =>
        Polygon(pen, [topLeft, new(bottomRight.X, topLeft.Y), bottomRight, new(topLeft.X, bottomRight.Y)], fill);

    /// <summary>Draws an arrow: a line with a filled head.</summary>
    /// <param name="from">Its tail [mm].</param>
    /// <param name="to">Its point [mm].</param>
    /// <param name="headMm">Length of its head [mm].</param>
    public void Arrow(Point from, Point to, double headMm = 1.8)
    {
        var along = (1 / (to - from).Length) * (to - from);
        var neck = to - (headMm * along);
        Line(Pen.Fold, from, neck);
        Polygon(Pen.Leader, [to, neck + (0.35 * headMm * along.Left()), neck - (0.35 * headMm * along.Left())], Tone.Ink);
    }

    /// <summary>Writes a line of text.</summary>
    /// <param name="label">The text.</param>
    public void Write(Label label) => _items.Add(label);

    /// <summary>Writes a line of text.</summary>
    /// <param name="x">Anchor on the baseline [mm].</param>
    /// <param name="y">Baseline [mm].</param>
    /// <param name="text">The text.</param>
    /// <param name="sizeMm">Size of the type [mm].</param>
    /// <param name="anchor">Which point of it lies at the anchor.</param>
    /// <param name="isBold">Whether it is bold.</param>
    public void Write(double x, double y, string text, double sizeMm, Anchor anchor = Anchor.Start, bool isBold = false) =>
        _items.Add(new Label(new(x, y), text, sizeMm, anchor, isBold));

    /// <summary>Adds what was drawn elsewhere.</summary>
    /// <param name="items">The items.</param>
    /// <param name="by">How far to move them [mm].</param>
    public void Add(IEnumerable<SheetItem> items, Point by) => _items.AddRange(items.Select(item => item.Moved(by)));
}
