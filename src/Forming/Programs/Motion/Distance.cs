using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>Distances in section.</summary>
internal static class Distance
{
    /// <summary>From a segment to a jaw, 0 where they cross or the segment lies inside.</summary>
    /// <param name="a">First end.</param>
    /// <param name="b">Second end.</param>
    /// <param name="jaw">The jaw.</param>
    /// <param name="enough">Beyond this any answer at least as large will do [mm].</param>
    /// <returns>The distance, or what is enough where it is no less [mm].</returns>
    public static double To(Point a, Point b, Jaw jaw, double enough)
    {
        var apart = jaw.Bounds.DistanceTo(a, b);
        if (apart >= enough)
            return apart;
        var outline = jaw.Outline;
        var least = enough * enough;
        var own = new Box(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));
        var inside = false;
        var from = outline[^1];
        foreach (var to in outline)
        {
            var boxes = own.SquaredTo(from, to);
            if (boxes < least)
            {
                if (boxes <= 0 && Crosses(a, b, from, to))
                    return 0;

                // Every corner is the end of one edge: asked for there, or as far as that edge.
                least = Math.Min(least, Math.Min(Math.Min(Squared(a, from, to), Squared(b, from, to)), Squared(to, a, b)));
            }

            if (from.Y > a.Y != to.Y > a.Y && a.X < from.X + ((a.Y - from.Y) * (to.X - from.X) / (to.Y - from.Y)))
                inside = !inside;
            from = to;
        }

        return inside ? 0 : Math.Sqrt(least);
    }

    /// <summary>From the end of a sheet, cut square, to a jaw; 0 where they overlap.</summary>
    /// <param name="a">Where the end begins, on the mid surface.</param>
    /// <param name="b">The cut edge, on the mid surface.</param>
    /// <param name="half">Half the thickness [mm].</param>
    /// <param name="jaw">The jaw.</param>
    /// <param name="enough">Beyond this any answer at least as large will do [mm].</param>
    /// <returns>The distance, or what is enough where it is no less [mm].</returns>
    public static double ToSquareEnd(Point a, Point b, double half, Jaw jaw, double enough) =>
        ToEnd(SquareEnd(a, b, half), jaw, enough);

    /// <summary>From the outline of the end of a sheet to a jaw; 0 where they overlap.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="jaw">The jaw.</param>
    /// <param name="enough">Beyond this any answer at least as large will do [mm].</param>
    /// <returns>The distance, or what is enough where it is no less [mm].</returns>
    public static double ToEnd((Point From, Point To)[] outline, Jaw jaw, double enough)
    {
        var least = enough;
        foreach (var (from, to) in outline)
            least = Math.Min(least, To(from, to, jaw, least));
        return least;
    }

    /// <summary>From the strip that a segment sweeps on a straight way to a jaw, 0 where they overlap.</summary>
    /// <param name="a">First end at the beginning.</param>
    /// <param name="b">Second end at the beginning.</param>
    /// <param name="by">How far both go [mm].</param>
    /// <param name="jaw">The jaw.</param>
    /// <param name="enough">Beyond this any answer at least as large will do [mm].</param>
    /// <returns>The distance, or what is enough where it is no less [mm].</returns>
    public static double ToSwept(Point a, Point b, Point by, Jaw jaw, double enough)
    {
        ReadOnlySpan<Point> corners = [a, b, b + by, a + by];
        var box = Box.Of(corners);
        if (jaw.Bounds.DistanceTo(new(box.Left, box.Low), new(box.Right, box.High)) >= enough)
            return enough;
        var least = enough;
        for (var i = 0; i < 4; i++)
            least = Math.Min(least, To(corners[i], corners[(i + 1) % 4], jaw, least));
        return least > 0 && IsWithin(jaw.Outline[0], a, b - a, by) ? 0 : least;
    }

    /// <summary>Between two segments, 0 where they cross.</summary>
    public static double Between(Point a, Point b, Point c, Point d) => Crosses(a, b, c, d)
        ? 0
        : Math.Sqrt(Math.Min(Math.Min(Squared(a, c, d), Squared(b, c, d)), Math.Min(Squared(c, a, b), Squared(d, a, b))));

    /// <summary>The outline of the end of a sheet, cut square: its two faces and the cut edge.</summary>
    /// <param name="a">Where the end begins, on the mid surface.</param>
    /// <param name="b">The cut edge, on the mid surface.</param>
    /// <param name="half">Half the thickness [mm].</param>
    public static (Point From, Point To)[] SquareEnd(Point a, Point b, double half)
    {
        var along = b - a;
        return EndAcross(a, b, half / along.Length * along.Left());
    }

    /// <summary>The outline of the end of a sheet: its two faces and the cut edge.</summary>
    /// <param name="a">Where the end begins, on the mid surface.</param>
    /// <param name="b">The cut edge, on the mid surface.</param>
    /// <param name="across">From the mid surface to a face [mm].</param>
    public static (Point From, Point To)[] EndAcross(Point a, Point b, Point across) =>
        [(b + across, b - across), (a + across, b + across), (a - across, b - across)];

    // Within the parallelogram at a corner with two sides: both shares between 0 and 1.
    private static bool IsWithin(Point p, Point corner, Point one, Point other)
    {
        var area = one.Cross(other);
        var from = p - corner;
        return area != 0 && from.Cross(other) / area is > 0 and < 1 && one.Cross(from) / area is > 0 and < 1;
    }

    private static bool Crosses(Point a, Point b, Point c, Point d)
    {
        Point ab = b - a, cd = d - c;
        var acd = cd.Cross(a - c);
        var bcd = cd.Cross(b - c);
        if (acd * bcd > 0)
            return false;
        var cab = ab.Cross(c - a);
        var dab = ab.Cross(d - a);
        return cab * dab <= 0 && (acd != bcd || cab != dab);
    }

    private static double Squared(Point p, Point a, Point b)
    {
        Point ab = b - a, ap = p - a;
        var length = ab.Dot(ab);
        var t = length > 0 ? Math.Clamp(ap.Dot(ab) / length, 0, 1) : 0;
        var miss = ap - (t * ab);
        return miss.Dot(miss);
    }
}
