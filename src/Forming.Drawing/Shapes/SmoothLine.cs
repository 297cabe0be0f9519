namespace Forming.Drawing.Shapes;

/// <summary>A smooth line through points that a plan gives few of.</summary>
internal static class SmoothLine
{
    private const int Steps = 4;

    /// <summary>Points nearer than this are one: their chord has no heading [mm].</summary>
    private const double SameMm = 1e-6;

    /// <summary>Points of the cubic pieces between neighbours, headings as on the circle through each and the points beside it.</summary>
    /// <param name="points">[n] points, n ≥ 2 [mm].</param>
    /// <param name="start">Heading at the first, of length 1.</param>
    /// <param name="end">Heading at the last, of length 1.</param>
    public static IEnumerable<Point> Through(IReadOnlyList<Point> points, Point start, Point end)
    {
        points = [.. points.Where((point, i) => i == 0 || (point - points[i - 1]).Length > SameMm)];
        yield return points[0];
        for (var i = 1; i < points.Count; i++)
        {
            var chord = points[i] - points[i - 1];
            Point from = chord.Length * Heading(i - 1), to = chord.Length * Heading(i);
            for (var step = 1; step <= Steps; step++)
            {
                // Hermite's cubic: h00 = 1 - h01, h01 = u² (3 - 2u), h10 = u (1 - u)², h11 = -u² (1 - u).
                var u = (double)step / Steps;
                yield return points[i - 1] + (u * u * (3 - (2 * u)) * chord) + (u * (1 - u) * (1 - u) * from) - (u * u * (1 - u) * to);
            }
        }

        Point Heading(int at)
        {
            if (at == 0)
                return start;
            if (at == points.Count - 1)
                return end;
            Point before = points[at] - points[at - 1], after = points[at + 1] - points[at];
            // The nearer neighbour counts more: a chord turns from the tangent by half of what it spans.
            var middle = (after.Length / before.Length * before) + (before.Length / after.Length * after);
            return 1 / middle.Length * middle;
        }
    }
}
