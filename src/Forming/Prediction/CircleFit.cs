namespace Forming.Prediction;

/// <summary>The circle, or line, that lies nearest to a run of points in the sense of least squares of true distances.</summary>
internal static class CircleFit
{
    /// <summary>Fits to a stretch of a curve.</summary>
    /// <param name="from">Where the stretch begins [mm].</param>
    /// <param name="to">Where it ends, beyond that [mm].</param>
    /// <param name="at">The curve: a place for each length along it [mm].</param>
    /// <param name="pieces">Pieces between the places that are looked at, at least 2.</param>
    /// <returns>Curvature of the circle [1/mm], positive to the left; 0 is a line.</returns>
    public static double Curvature(double from, double to, Func<double, Point> at, int pieces)
    {
        Span<Point> points = stackalloc Point[pieces + 1];
        for (var i = 0; i <= pieces; i++)
            points[i] = at(from + ((to - from) * i / pieces));
        return Curvature(points);
    }

    /// <summary>Fits.</summary>
    /// <param name="points">[n] points along the run [mm], at least 3.</param>
    /// <returns>Curvature of the circle [1/mm], positive to the left; 0 is a line.</returns>
    /// <remarks>
    /// The circle is <c>A r² + B x + C y + D = 0</c> with <c>B² + C² - 4AD = 1</c>, which a line does not leave; the distance is then
    /// <c>2P/(1 + √(1 + 4AP))</c>, P the left side. The unknowns are the curvature 2A, the turn of (B, C) and D.
    /// </remarks>
    public static double Curvature(ReadOnlySpan<Point> points)
    {
        // In a frame on the run's middle, along its chord, D stays small and its influence is that of a shift.
        var origin = points[points.Length / 2];
        var chord = points[^1] - points[0];
        var along = 1 / chord.Length * chord;
        double a = 0, turn = 0, d = 0;
        Span<double> normal = stackalloc double[12];
        for (var i = 0; i < 50; i++)
        {
            normal.Clear();
            var size = Math.Sqrt(1 + (4 * a * d));
            var (b, c) = (-size * Math.Sin(turn), size * Math.Cos(turn));
            foreach (var point in points)
            {
                var from = point - origin;
                Point p = new(along.Dot(from), along.Cross(from));
                var square = p.Dot(p);
                var left = (a * square) + (b * p.X) + (c * p.Y) + d;
                var root = Math.Sqrt(Math.Max(0, 1 + (4 * a * left)));
                var distance = 2 * left / (1 + root);
                AddRow(normal, square, (-c * p.X) + (b * p.Y), 1, -distance);
            }

            if (!BorderedSystem.SolveDense(normal, 3))
                return 0;
            a += normal[3];
            turn += normal[7];
            d += normal[11];
            if (Math.Abs(normal[3]) <= 1e-12 * Math.Abs(a) || Math.Abs(normal[3]) < 1e-18)
                break;
        }

        return -2 * a;
    }

    private static void AddRow(Span<double> normal, double first, double second, double third, double wanted)
    {
        ReadOnlySpan<double> row = [first, second, third, wanted];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 4; j++)
                normal[(i * 4) + j] += row[i] * row[j];
        }
    }
}
