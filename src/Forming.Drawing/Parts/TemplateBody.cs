using Forming.Drawing.Shapes;
using Forming.Numerics;

namespace Forming.Drawing.Parts;

/// <summary>What is cut around the edge of a template.</summary>
internal static class TemplateBody
{
    /// <summary>Points nearer than this to the line through their neighbours are left out [mm].</summary>
    private const double ThinMm = 0.004;

    private static readonly double[] DepthsMm = [50, 35, 25, 15, 8];

    /// <summary>The outline of a template with an edge, which comes first.</summary>
    /// <param name="edge">[n] points of the edge, along the sheet [mm].</param>
    /// <param name="isInside">Whether the template lies on the inside of the bend, to the left of the edge.</param>
    /// <returns>
    /// Corners, the first not repeated; the depth of a strip along the edge, null where it is filled out to its chord; null where no
    /// template of one piece fits.
    /// </returns>
    public static (Point[] Outline, double? DepthMm)? Of(IReadOnlyList<Point> edge, bool isInside)
    {
        var thin = Thinned(edge);
        var depthToChord = isInside && SimplePolygon.FirstCrossing(thin) is null ? ToChord(thin) : 0;
        // A bend that turns far is filled out to the straight line between its ends.
        if (depthToChord >= DepthsMm[0])
            return (thin, null);
        foreach (var depth in DepthsMm)
        {
            Point[] outline = [.. thin, .. Thinned(Ribbon.Under(edge, isInside ? -depth : depth).Outer).Reverse()];
            if (SimplePolygon.FirstCrossing(outline) is null)
                return (outline, depth);
        }

        return depthToChord > DepthsMm[^1] ? (thin, null) : null;
    }

    /// <summary>The points of a line that keep its shape.</summary>
    /// <param name="points">[n] points [mm].</param>
    public static Point[] Thinned(IReadOnlyList<Point> points)
    {
        var isKept = new bool[points.Count];
        isKept[0] = isKept[^1] = true;
        var spans = new Stack<(int From, int To)>([(0, points.Count - 1)]);
        while (spans.TryPop(out var span))
        {
            var (from, to) = span;
            var chord = points[to] - points[from];
            var length = chord.Length;
            double most = ThinMm;
            var furthest = -1;
            for (var i = from + 1; i < to; i++)
            {
                var off = length > 0 ? Math.Abs(chord.Cross(points[i] - points[from])) / length : (points[i] - points[from]).Length;
                if (off > most)
                    (most, furthest) = (off, i);
            }

            if (furthest < 0)
                continue;
            isKept[furthest] = true;
            spans.Push((from, furthest));
            spans.Push((furthest, to));
        }

        return [.. points.Where((_, i) => isKept[i])];
    }

    // How far the edge goes from the straight line between its ends.
    private static double ToChord(Point[] edge)
    {
        var across = edge[^1] - edge[0];
        return across.Length > 0 ? edge.Max(point => (point - edge[0]).Cross(across)) / across.Length : 0;
    }
}
