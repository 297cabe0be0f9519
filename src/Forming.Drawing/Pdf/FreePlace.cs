using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Pdf;

/// <summary>Looks for an empty square on a page.</summary>
internal static class FreePlace
{
    private const double Step = 5;
    private const double Clear = 2;

    /// <summary>Upper left corner of an empty square, the lowest and then the furthest to the right; null where there is none.</summary>
    /// <param name="items">What is on the page.</param>
    /// <param name="side">Side of the square [mm].</param>
    /// <param name="least">Upper left corner of the room [mm].</param>
    /// <param name="most">Lower right corner of the room [mm].</param>
    public static Point? For(IReadOnlyList<SheetItem> items, double side, Point least, Point most)
    {
        var inTheWay = items.SelectMany(Pieces).ToArray();
        for (var y = most.Y - side - Clear; y >= least.Y + Clear; y -= Step)
        {
            for (var x = most.X - side - Clear; x >= least.X + Clear; x -= Step)
            {
                Point low = new(x - Clear, y - Clear), high = new(x + side + Clear, y + side + Clear);
                if (!inTheWay.Any(piece => Clip.Inside(piece, low, high) is not null))
                    return new(x, y);
            }
        }

        return null;
    }

    private static IEnumerable<Segment> Pieces(SheetItem item)
    {
        switch (item)
        {
            case Stroke stroke:
                for (var i = 1; i < stroke.Points.Count; i++)
                    yield return new(stroke.Points[i - 1], stroke.Points[i]);
                if (stroke.IsClosed)
                    yield return new(stroke.Points[^1], stroke.Points[0]);
                break;
            case Label { Tone: not Tone.Ghost } label:
                var along = label.WidthMm * Point.Along(Angle.FromDegrees(label.TurnDegrees).Radians);
                var from = label.At - (label.Anchor switch { Anchor.End => 1, Anchor.Middle => 0.5, _ => 0 } * along);
                yield return new(from, from + along);
                break;
        }
    }
}
