namespace Forming.Drawing.Shapes;

/// <summary>Hatching of what is cut in section.</summary>
internal static class Hatch
{
    /// <summary>Lines at 45° inside a polygon and inside a rectangle.</summary>
    /// <param name="polygon">[n] corners, first not repeated [mm].</param>
    /// <param name="pitch">Distance of the lines, square to them [mm].</param>
    /// <param name="least">The rectangle's corner of least x and y [mm].</param>
    /// <param name="most">The opposite corner [mm].</param>
    public static IEnumerable<Segment> Of(IReadOnlyList<Point> polygon, double pitch, Point least, Point most)
    {
        // Lines x - y = c: between crossings with the outline, odd to even, lies the inside.
        var step = pitch * Math.Sqrt(2);
        var from = Math.Ceiling(Math.Max(polygon.Min(Across), least.X - most.Y) / step);
        var to = Math.Min(polygon.Max(Across), most.X - least.Y) / step;
        for (var line = from; line <= to; line++)
        {
            var c = line * step;
            var crossings = new List<double>();
            for (var i = 0; i < polygon.Count; i++)
            {
                Point a = polygon[i], b = polygon[(i + 1) % polygon.Count];
                double before = Across(a) - c, after = Across(b) - c;
                if (before < 0 != after < 0)
                    crossings.Add(a.Y + (before / (before - after) * (b.Y - a.Y)));
            }

            crossings.Sort();
            for (var i = 0; i + 1 < crossings.Count; i += 2)
            {
                var inside = new Segment(new(crossings[i] + c, crossings[i]), new(crossings[i + 1] + c, crossings[i + 1]));
                if (Clip.Inside(inside, least, most) is { } shown)
                    yield return shown;
            }
        }
    }

    private static double Across(Point point) => point.X - point.Y;
}
