namespace Forming.Curves.Fitting;

/// <summary>
/// A broken line that shows where the points go: through the points themselves, or, where their scatter turns it back and
/// forth, through the middles of neighbours.
/// </summary>
/// <param name="Corners">[m] its corners.</param>
/// <param name="Places">[m] index among the points that a corner stands for, the mean of a group.</param>
/// <param name="Lengths">[m] its length up to each corner.</param>
internal sealed record Guide(Point[] Corners, double[] Places, double[] Lengths)
{
    private const int FewestGroups = 8;

    /// <summary>A broken line that turns no more than this from one chord to the next shows the way of a curve.</summary>
    private const double SmoothTurn = Math.PI / 3;

    /// <summary>The finest line that is smooth; the smoothest where none is.</summary>
    /// <param name="points">[n] points.</param>
    public static Guide Through(Point[] points)
    {
        var (best, least) = (Grouped(points, points.Length), double.PositiveInfinity);
        for (var size = 1; size == 1 || points.Length / size >= FewestGroups; size *= 2)
        {
            var guide = size == 1 ? best : Grouped(points, (points.Length / size) | 1);
            var turn = guide.LargestTurn();
            if (turn < least) (best, least) = (guide, turn);
            if (turn <= SmoothTurn) break;
        }

        return best;
    }

    /// <summary>Arc length at each point, as if the points were even between the corners.</summary>
    /// <param name="count">How many points.</param>
    public double[] LengthsAt(int count)
    {
        var lengths = new double[count];
        var m = 0;
        for (var j = 0; j < count; j++)
        {
            while (m < Places.Length - 2 && j >= Places[m + 1]) m++;
            lengths[j] = Lengths[m] + ((j - Places[m]) / (Places[m + 1] - Places[m]) * (Lengths[m + 1] - Lengths[m]));
        }

        return lengths;
    }

    /// <summary>The same line shifted, with every length multiplied, measured from another start.</summary>
    /// <param name="factor">The factor.</param>
    /// <param name="start">Length that becomes 0.</param>
    public Guide Scaled(double factor, double start) =>
        new(Array.ConvertAll(Corners, c => factor * c), Places, Array.ConvertAll(Lengths, l => factor * (l - start)));

    private static Guide Grouped(Point[] points, int groups)
    {
        var bounds = Samples.BoundsOf(points.Length, groups);
        var (corners, places, lengths) = (new Point[groups], new double[groups], new double[groups]);
        for (var g = 0; g < groups; g++)
        {
            var sum = Point.Origin;
            for (var j = bounds[g]; j < bounds[g + 1]; j++) sum += points[j];
            var size = bounds[g + 1] - bounds[g];
            (corners[g], places[g]) = (size == 1 ? sum : 1.0 / size * sum, (bounds[g] + bounds[g + 1] - 1) / 2.0);
            if (g > 0) lengths[g] = lengths[g - 1] + (corners[g] - corners[g - 1]).Length;
        }

        return new(corners, places, lengths);
    }

    private double LargestTurn()
    {
        var (largest, last) = (0.0, default(Point));
        for (var j = 1; j < Corners.Length; j++)
        {
            var chord = Corners[j] - Corners[j - 1];
            if (chord.Length == 0) continue;
            if (last.Length > 0) largest = Math.Max(largest, Math.Abs(Math.Atan2(last.Cross(chord), last.Dot(chord))));
            last = chord;
        }

        return largest;
    }
}

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
