using Forming.Drawing.Parts;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Pdf;

/// <summary>A part in the frame of its pages: mm, x to the right, y down, top left at (0, 0).</summary>
internal sealed class PartTiles
{
    private readonly IReadOnlyList<PartLine> _lines;
    private readonly IReadOnlyList<NamedEdge> _edges;
    private readonly IReadOnlyList<Label> _notes;

    private PartTiles(FlatPart part, Func<Point, Point> turned, double turnDegrees)
    {
        var corners = part.Drawn.Select(turned).ToArray();
        var least = new Point(corners.Min(point => point.X), corners.Min(point => point.Y));
        Most = new Point(corners.Max(point => point.X), corners.Max(point => point.Y)) - least;
        _lines = [.. part.Lines.Select(line => line with { Points = [.. line.Points.Select(OnPages)] })];
        _edges = [.. part.Edges.Select(edge => edge with { Points = [.. edge.Points.Select(OnPages)] })];
        _notes =
        [
            .. part.Notes.Select(note => new Label(
                OnPages(note.Start()), note.Text, note.SizeMm, TurnDegrees: -note.TurnDegrees - turnDegrees)),
        ];

        Point OnPages(Point point) => turned(point) - least;
    }

    /// <summary>Lower right corner of what is drawn [mm].</summary>
    public Point Most { get; }

    /// <summary>Turns a part as its pages show it.</summary>
    /// <param name="part">The part.</param>
    /// <param name="turnDegrees">Turned counter-clockwise [°]; a blank runs down the page and is not turned.</param>
    public static PartTiles Of(FlatPart part, double turnDegrees)
    {
        var along = Point.Along(Angle.FromDegrees(turnDegrees).Radians);
        return part.RunsDown
            ? new(part, point => new(point.Y, point.X), 0)
            : new(part, point => Mirrored(point.TurnedTo(along)), turnDegrees);

        static Point Mirrored(Point point) => new(point.X, -point.Y);
    }

    /// <summary>Whether a window shows any line but the edges of the stock.</summary>
    /// <param name="least">The window's upper left corner [mm].</param>
    /// <param name="most">Its lower right corner [mm].</param>
    public bool AnyIn(Point least, Point most) =>
        _lines.Any(line => line.Role != LineRole.Stock && line.Pieces().Any(piece => Clip.Inside(piece, least, most) is not null));

    /// <summary>The lines with words that a window shows.</summary>
    /// <param name="least">The window's upper left corner [mm].</param>
    /// <param name="most">Its lower right corner [mm].</param>
    /// <param name="shift">From these pages' frame to the page [mm].</param>
    public IEnumerable<ShownLine> Shown(Point least, Point most, Point shift)
    {
        foreach (var line in _lines)
        {
            if (line.Label is not { } label || Clip.Inside(new(line.Points[0], line.Points[^1]), least, most) is not { } shown)
                continue;
            Point a = shown.Start + shift, b = shown.End + shift;
            yield return a.X <= b.X ? new(label, a, b) : new(label, b, a);
        }
    }

    /// <summary>Draws what a window shows.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="least">The window's upper left corner [mm].</param>
    /// <param name="most">Its lower right corner [mm].</param>
    /// <param name="shift">From these pages' frame to the page [mm].</param>
    public void Draw(Sketch sketch, Point least, Point most, Point shift)
    {
        foreach (var line in _lines)
            Draw(sketch, line, least, most, shift);
        foreach (var edge in _edges)
            Draw(sketch, edge, least, most, shift);
        foreach (var note in _notes.Where(note => IsIn(note.At, least, most)))
            sketch.Write((Label)note.Moved(shift));
    }

    private static bool IsIn(Point point, Point least, Point most) =>
        point.X >= least.X && point.X <= most.X && point.Y >= least.Y && point.Y <= most.Y;

    private static void Draw(Sketch sketch, PartLine line, Point least, Point most, Point shift)
    {
        var pen = PartSketch.PenOf(line.Role);
        List<Point> run = [];
        foreach (var piece in line.Pieces())
        {
            if (Clip.Inside(piece, least, most) is not { } shown)
                continue;
            var (from, to) = (shown.Start + shift, shown.End + shift);
            if (run.Count > 0 && (run[^1] - from).Length > 1e-9)
                Close();
            if (run.Count == 0)
                run.Add(from);
            if ((to - run[^1]).Length > 0)
                run.Add(to);
        }

        Close();

        void Close()
        {
            if (run.Count > 1)
                sketch.Line(pen, [.. run]);
            run.Clear();
        }
    }

    // Along the longest straight piece that is shown, where no line meets it, on the blank's side.
    private void Draw(Sketch sketch, NamedEdge edge, Point least, Point most, Point shift)
    {
        const double size = 2.6;
        Segment? longest = null;
        for (var i = 1; i < edge.Points.Count; i++)
        {
            if (Clip.Inside(new(edge.Points[i - 1], edge.Points[i]), least, most) is { } shown
                && (longest is not { } known || (shown.End - shown.Start).Length > (known.End - known.Start).Length))
            {
                longest = shown;
            }
        }

        var width = Typeface.Regular.Width(edge.Name, size);
        if (longest is not { } piece || (piece.End - piece.Start).Length < width + 2)
            return;
        var along = piece.End - piece.Start;
        along = 1 / along.Length * along;
        var middle = FreestOn(piece, along);
        if (along.X < -1e-9 || (Math.Abs(along.X) <= 1e-9 && along.Y > 0))
            along = -1 * along;
        var inward = along.Left();
        var isInward = inward.Dot((0.5 * Most) - middle) >= 0;
        // The baseline is at the foot of the letters, which are on the other side of the line there.
        var at = middle + ((isInward ? 0.9 + (0.72 * size) : -0.9) * inward);
        sketch.Write(new Label(at + shift, edge.Name, size, Anchor.Middle, TurnDegrees: new Angle(Math.Atan2(along.Y, along.X)).Degrees));
    }

    // The middle of the widest gap between lines that end on a piece of an edge.
    private Point FreestOn(Segment piece, Point along)
    {
        var length = (piece.End - piece.Start).Length;
        double[] ends =
        [
            0,
            .. from line in _lines
               where !line.IsClosed
               from end in (Point[])[line.Points[0], line.Points[^1]]
               let off = end - piece.Start
               where Math.Abs(off.Cross(along)) < 0.5
               let place = off.Dot(along)
               where place > 0 && place < length
               orderby place
               select place,
            length,
        ];
        var widest = Enumerable.Range(1, ends.Length - 1).MaxBy(i => ends[i] - ends[i - 1]);
        return piece.Start + (0.5 * (ends[widest - 1] + ends[widest]) * along);
    }
}
