namespace Forming.Numerics;

/// <summary>Whether an outline is one: no corner twice in a row, no two edges that meet but at the corner they share.</summary>
public static class SimplePolygon
{
    /// <summary>The first corner that repeats the one before it.</summary>
    /// <param name="corners">[n] corners, first not repeated.</param>
    /// <returns>Its index; 0 where the last repeats the first; null where there is none.</returns>
    public static int? FirstRepeated(IReadOnlyList<Point> corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        for (var i = 1; i <= corners.Count; i++)
        {
            if (corners[i % corners.Count] == corners[i - 1])
                return i % corners.Count;
        }

        return null;
    }

    /// <summary>The first two edges that cross, touch or lie on each other.</summary>
    /// <param name="corners">[n] corners, first not repeated, no corner twice in a row.</param>
    /// <returns>Indices of the corners at which the two edges start; null where the outline is simple.</returns>
    public static (int First, int Second)? FirstCrossing(IReadOnlyList<Point> corners)
    {
        ArgumentNullException.ThrowIfNull(corners);
        Point[] closed = [.. corners, corners[0]];
        var count = corners.Count;
        for (var i = 0; i < count; i++)
        {
            var (a, b) = (closed[i], closed[i + 1]);
            for (var j = i + 1; j < count; j++)
            {
                var (c, d) = (closed[j], closed[j + 1]);
                var isBad = j == i + 1 ? FoldsBack(a, b, d)
                    : i == 0 && j == count - 1 ? FoldsBack(c, d, b)
                    : !AreApart(a.X, b.X, c.X, d.X) && !AreApart(a.Y, b.Y, c.Y, d.Y) && Meet(a, b, c, d);
                if (isBad)
                    return (i, j);
            }
        }

        return null;
    }

    private static bool AreApart(double a, double b, double c, double d) =>
        a < b ? Math.Max(c, d) < a || Math.Min(c, d) > b : Math.Max(c, d) < b || Math.Min(c, d) > a;

    // The edge after a corner lies on the one before it.
    private static bool FoldsBack(Point before, Point corner, Point after) =>
        (corner - before).Cross(after - corner) == 0 && (corner - before).Dot(after - corner) < 0;

    private static bool Meet(Point a, Point b, Point c, Point d)
    {
        double abc = Side(a, b, c), abd = Side(a, b, d), cda = Side(c, d, a), cdb = Side(c, d, b);
        if (Differ(abc, abd) && Differ(cda, cdb))
            return true;
        return (abc == 0 && Within(a, b, c))
            || (abd == 0 && Within(a, b, d))
            || (cda == 0 && Within(c, d, a))
            || (cdb == 0 && Within(c, d, b));
    }

    private static double Side(Point from, Point to, Point point) => (to - from).Cross(point - from);

    private static bool Differ(double one, double other) => (one > 0 && other < 0) || (one < 0 && other > 0);

    // Of a point on the line through both ends.
    private static bool Within(Point from, Point to, Point point) => (point - from).Dot(point - to) <= 0;
}
