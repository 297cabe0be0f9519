namespace Forming.Drawing.Shapes;

/// <summary>Cuts lines to a stretch of a blank.</summary>
internal static class Clip
{
    /// <summary>The part of a line between two places along the blank, or null where there is none.</summary>
    /// <param name="a">One end [mm].</param>
    /// <param name="b">The other end [mm].</param>
    /// <param name="from">Lower place [mm].</param>
    /// <param name="to">Upper place [mm].</param>
    public static Segment? Along(Point a, Point b, double from, double to)
    {
        if (Math.Max(a.X, b.X) < from || Math.Min(a.X, b.X) > to)
            return null;
        return new(Kept(a, b), Kept(b, a));

        Point Kept(Point end, Point other)
        {
            var x = Math.Clamp(end.X, from, to);
            return x == end.X ? end : end + ((x - end.X) / (other.X - end.X) * (other - end));
        }
    }

    /// <summary>The part of a line inside a rectangle, or null where there is none.</summary>
    /// <param name="line">The line.</param>
    /// <param name="least">The rectangle's corner of least x and y [mm].</param>
    /// <param name="most">The opposite corner [mm].</param>
    public static Segment? Inside(Segment line, Point least, Point most)
    {
        if (Along(line.Start, line.End, least.X, most.X) is not { } kept)
            return null;
        return Along(Turned(kept.Start), Turned(kept.End), least.Y, most.Y) is { } turned
            ? new(Turned(turned.Start), Turned(turned.End))
            : null;

        static Point Turned(Point point) => new(point.Y, point.X);
    }
}
