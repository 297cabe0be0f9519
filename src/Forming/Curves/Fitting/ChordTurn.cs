namespace Forming.Curves.Fitting;

/// <summary>A first guess at a curve: a polynomial through the directions of the chords, longer chords counting more.</summary>
internal static class ChordTurn
{
    /// <summary>Direction over arc length, by least squares.</summary>
    /// <param name="guide">The chords.</param>
    /// <param name="terms">2 for an arc, 3 for a clothoid.</param>
    /// <returns>[terms] direction at the first point [rad], curvature there, half of the curvature's slope.</returns>
    public static double[] Of(Guide guide, int terms)
    {
        var rows = guide.Corners.Length - 1;
        var (columns, directions, polynomial) = (new double[rows * terms], new double[rows], new double[terms]);
        var (direction, last) = (0.0, default(Point));
        for (var j = 0; j < rows; j++)
        {
            var chord = guide.Corners[j + 1] - guide.Corners[j];
            if (chord.Length == 0) continue;
            direction += last == default ? Math.Atan2(chord.Y, chord.X) : Math.Atan2(last.Cross(chord), last.Dot(chord));
            var (weight, s) = (Math.Sqrt(chord.Length), (guide.Lengths[j] + guide.Lengths[j + 1]) / 2);
            directions[j] = weight * direction;
            for (var i = 0; i < terms; i++, weight *= s) columns[(i * rows) + j] = weight;
            last = chord;
        }

        LeastSquares.Solve(columns, directions, polynomial);
        return polynomial;
    }
}
