using Forming.Drawing.Parts;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Pdf;

/// <summary>A line with words, as far as a page shows it.</summary>
/// <param name="Label">The words.</param>
/// <param name="Left">Its left end on the page [mm].</param>
/// <param name="Right">Its right end on the page [mm].</param>
internal sealed record ShownLine(LineLabel Label, Point Left, Point Right)
{
    /// <summary>Where the line passes a place across the page.</summary>
    /// <param name="x">The place [mm].</param>
    public double YAt(double x) => Right.X - Left.X < 1e-9 ? Left.Y : Left.Y + ((x - Left.X) * (Right.Y - Left.Y) / (Right.X - Left.X));
}

/// <summary>Words for every line that a page shows: spread apart, on alternate sides where lines are close, each led to its line.</summary>
internal static class LineLabels
{
    private const double Size = 2.6;
    private const double Pitch = 3.7;
    private const double Above = 0.9;
    private const double LeaderMm = 5;
    private const double NumberMm = 8;

    /// <summary>Draws the words.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="lines">The lines on the page.</param>
    /// <param name="least">Upper left corner of what is drawn on [mm].</param>
    /// <param name="most">Lower right corner of what is drawn on [mm].</param>
    /// <param name="areBeside">Whether words lie beside the lines, past their right ends.</param>
    public static void Draw(Sketch sketch, IReadOnlyList<ShownLine> lines, Point least, Point most, bool areBeside)
    {
        if (lines.Count == 0)
            return;
        var inOrder = lines.OrderBy(line => line.Left.Y + line.Right.Y).ToArray();
        var end = lines.Max(line => line.Right.X);
        var from = areBeside ? end + 2 : Math.Min(least.X + 8, end - NumberMm);
        var isCrowded = false;
        for (var i = 1; i < inOrder.Length; i++)
            isCrowded |= inOrder[i].YAt(from) - inOrder[i - 1].YAt(from) < Pitch;
        var columns = isCrowded ? 2 : 1;
        var width = ((areBeside ? most.X : end) - from) / columns;
        for (var column = 0; column < columns; column++)
        {
            Column(
                sketch,
                [.. inOrder.Where((_, i) => i % columns == column)],
                from + (column * width),
                from + ((column + 1) * width),
                (least.Y + Size, most.Y),
                areBeside,
                isShort: isCrowded && !areBeside);
        }
    }

    private static void Column(
        Sketch sketch,
        IReadOnlyList<ShownLine> lines,
        double from,
        double to,
        (double Least, double Most) heights,
        bool areBeside,
        bool isShort)
    {
        // On a line words lie above it, beside a line they are level with it: then leaders pass between the words of their neighbours.
        var above = areBeside ? -0.36 * Size : Above;
        // A slanting line may cross only a corner of the page: its words are where it is.
        var places = lines
            .Select(line => (Line: line, X: areBeside ? from : Math.Max(line.Left.X + 2, Math.Min(from, line.Right.X - NumberMm))))
            .Select(place => (place.Line, place.X, Y: place.Line.YAt(place.X) - above))
            .OrderBy(place => place.Y)
            .ToArray();
        var spread = LabelSpacing.Apart([.. places.Select(place => place.Y)], Pitch, heights.Least, heights.Most);
        for (var i = 0; i < places.Length; i++)
        {
            var (line, x, y) = places[i];
            var along = line.Right - line.Left;
            var turn = areBeside ? 0 : Math.Atan2(along.Y, along.X);
            var at = new Point(x, spread[i]);
            if (areBeside)
            {
                at += new Point(LeaderMm, 0);
                sketch.Line(Pen.Leader, [line.Right, new(x, line.Right.Y), at + new Point(-0.8, -0.36 * Size)]);
            }
            else if (Math.Abs(spread[i] - y) > 0.3)
            {
                at += new Point(LeaderMm, 0);
                sketch.Line(Pen.Leader, new(x, y + Above), at + new Point(-0.8, -0.36 * Size));
            }

            Words(sketch, line.Label, at, turn, to - at.X, hasLinesBelow: !areBeside, isShort);
        }
    }

    private static void Words(Sketch sketch, LineLabel label, Point at, double turn, double room, bool hasLinesBelow, bool isShort)
    {
        var degrees = new Angle(turn).Degrees;
        var number = new Label(at, label.Number, Size, IsBold: true, TurnDegrees: degrees, Station: label.Station);
        var gap = number.WidthMm + 1.6;
        string[] wordings = isShort || label.Settings.Length == 0 ? [label.Place] : [$"{label.Place}, {label.Settings}", label.Place];
        var fitting = wordings.FirstOrDefault(words => words.Length > 0 && gap + Typeface.Regular.Width(words, Size) <= room - 1);
        var width = fitting is null ? number.WidthMm : gap + Typeface.Regular.Width(fitting, Size);
        if (hasLinesBelow)
        {
            // Lines that pass under the words would be read as strokes of figures.
            Point along = Point.Along(turn), up = -0.85 * Size * along.Left(), down = 0.25 * Size * along.Left();
            Point left = at - (0.6 * along), right = at + ((width + 0.6) * along);
            sketch.Polygon(Pen.Leader, [left + down, right + down, right + up, left + up], Tone.Paper);
        }

        sketch.Write(number);
        if (fitting is not null)
            sketch.Write(new Label(at + (gap * Point.Along(turn)), fitting, Size, TurnDegrees: degrees));
    }
}
