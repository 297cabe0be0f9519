namespace Forming.Drawing.Shapes;

/// <summary>One cut edge of a blank, measured along itself from its lead-in corner.</summary>
internal sealed class EdgeRuler
{
    private readonly Point[] _points;

    private EdgeRuler(Point[] points) => _points = points;

    /// <summary>Both cut edges of a tapered blank.</summary>
    /// <param name="outline">[n] near edge from the lead-in on, far edge back to it, first = last [mm].</param>
    public static (EdgeRuler Near, EdgeRuler Far) Both(IReadOnlyList<Point> outline)
    {
        var half = (outline.Count - 1) / 2;
        return (new([.. outline.Take(half)]), new([.. outline.Skip(half).Take(half).Reverse()]));
    }

    /// <summary>Corners and points of the edge, from the lead-in on [mm].</summary>
    public IReadOnlyList<Point> Points => _points;

    /// <summary>Distance along the edge to the place of it that is nearest to a point [mm].</summary>
    /// <param name="point">The point.</param>
    public double AlongTo(Point point)
    {
        double along = 0, nearest = double.PositiveInfinity, found = 0;
        for (var i = 1; i < _points.Length; i++)
        {
            var piece = _points[i] - _points[i - 1];
            var length = piece.Length;
            var inside = length > 0 ? Math.Clamp((point - _points[i - 1]).Dot(piece) / length, 0, length) : 0;
            var miss = (point - _points[i - 1] - (length > 0 ? inside / length * piece : Point.Origin)).Length;
            if (miss < nearest)
                (nearest, found) = (miss, along + inside);
            along += length;
        }

        return found;
    }
}
