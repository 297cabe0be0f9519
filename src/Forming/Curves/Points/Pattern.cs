using Forming.Results;

namespace Forming.Curves.Points;

/// <summary>
/// Measured points made ready for a fit: the first at the origin, lengths relative to the broken line through them, so that
/// every limit further on is a plain number.
/// </summary>
/// <param name="Points">[n] relative points.</param>
/// <param name="Chords">[n] length of the broken line up to each point; the last is 1.</param>
/// <param name="Tolerance">Largest miss allowed, relative.</param>
/// <param name="Scale">What one unit stands for [mm].</param>
/// <param name="First">The first point as it was measured [mm].</param>
/// <param name="IsMirrored">Whether left and right are exchanged.</param>
internal sealed record Pattern(Point[] Points, double[] Chords, double Tolerance, double Scale, Point First, bool IsMirrored)
{
    /// <summary>The contract's name for these points.</summary>
    public const string Subject = "panel.curve.points";

    private const int FewestPoints = 4;
    private const int MostPoints = 2000;

    /// <summary>Points closer than this share of the pattern are one point: beyond it, rounding of the coordinates would turn chords.</summary>
    private const double SamePlace = 1e-9;

    /// <summary>Sizes outside 1e-100 to 1e100 mm are no sheet, and their squares leave the range of a double.</summary>
    private const double LargestScale = 1e100;

    /// <summary>A chord that turns more than this against the one before goes back, for chords too long for noise to turn them.</summary>
    private const double MostTurn = 2 * Math.PI / 3;

    /// <summary>Chords as long as this many tolerances are turned by less than 1/4 rad when both ends miss by the tolerance.</summary>
    private const double LongChord = 8;

    /// <summary>Checks the points and brings them to size.</summary>
    /// <param name="points">[n] measured points [mm].</param>
    /// <param name="toleranceMm">Largest miss allowed [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate or the tolerance is not finite, or the tolerance not positive.</exception>
    /// <exception cref="NoSolutionException">Too few or too many points, points that coincide or go back, a size no sheet has.</exception>
    public static Pattern From(IReadOnlyList<Point> points, double toleranceMm)
    {
        RefuseCount(points.Count);
        RefuseNonFinite(points, toleranceMm);
        var largest = points.Max(p => Math.Max(Math.Abs(p.X), Math.Abs(p.Y)));
        if (largest == 0) throw Coincide(0);
        var relative = new Point[points.Count];
        for (var j = 0; j < relative.Length; j++)
            relative[j] = new((points[j].X / largest) - (points[0].X / largest), (points[j].Y / largest) - (points[0].Y / largest));

        var chords = Lengths(relative);
        var total = chords[^1];
        if (total < SamePlace * SamePlace) throw Coincide(0);
        var scale = largest * total;
        if (!(scale < LargestScale && scale > 1 / LargestScale)) throw OutOfRange();
        for (var j = 0; j < relative.Length; j++) (relative[j], chords[j]) = (1 / total * relative[j], chords[j] / total);

        var pattern = new Pattern(relative, chords, toleranceMm / scale, scale, points[0], false);
        pattern.RefuseCoincidence();
        pattern.RefuseDoublingBack();
        return pattern;
    }

    /// <summary>The same points with left and right exchanged.</summary>
    public Pattern Mirrored() => this with { Points = Array.ConvertAll(Points, p => new Point(p.X, -p.Y)), IsMirrored = !IsMirrored };

    /// <summary>A relative place as it would have been measured [mm].</summary>
    /// <param name="place">The relative place.</param>
    public Point Measured(Point place) => First + (Scale * (IsMirrored ? new Point(place.X, -place.Y) : place));

    /// <summary>The largest distance of a point from the straight line that lies nearest to all of them.</summary>
    public double LargestMissOfALine()
    {
        var centre = 1.0 / Points.Length * Points.Aggregate(Point.Origin, (sum, p) => sum + p);
        double xx = 0, xy = 0, yy = 0;
        foreach (var p in Points)
        {
            var arm = p - centre;
            (xx, xy, yy) = (xx + (arm.X * arm.X), xy + (arm.X * arm.Y), yy + (arm.Y * arm.Y));
        }

        var normal = Point.Along(Math.Atan2(2 * xy, xx - yy) / 2).Left();
        return Points.Max(p => Math.Abs((p - centre).Dot(normal)));
    }

    private static double[] Lengths(Point[] points)
    {
        var lengths = new double[points.Length];
        for (var j = 1; j < points.Length; j++) lengths[j] = lengths[j - 1] + (points[j] - points[j - 1]).Length;
        return lengths;
    }

    private static void RefuseCount(int count)
    {
        if (count < FewestPoints)
            throw new NoSolutionException("curve.points-too-few", Subject, $"{count} measured points do not make a curve", $"4 to 2000 points");
        if (count > MostPoints)
            throw new NoSolutionException("curve.points-too-many", Subject, $"{count} measured points are more than a curve takes", $"4 to 2000 points");
    }

    private static void RefuseNonFinite(IReadOnlyList<Point> points, double tolerance)
    {
        if (!(double.IsFinite(tolerance) && tolerance > 0))
            throw new ArgumentOutOfRangeException(nameof(tolerance), tolerance, "The tolerance must be positive and finite.");
        if (points.Any(p => !double.IsFinite(p.X) || !double.IsFinite(p.Y)))
            throw new ArgumentOutOfRangeException(nameof(points), "Every coordinate must be finite.");
    }

    private void RefuseCoincidence()
    {
        for (var j = 1; j < Points.Length; j++)
            if (Chords[j] - Chords[j - 1] < SamePlace) throw Coincide(j - 1);
    }

    private void RefuseDoublingBack()
    {
        var spacing = LongChord * Tolerance;
        var (last, chord) = (0, default(Point));
        for (var j = 1; j < Points.Length; j++)
        {
            var next = Points[j] - Points[last];
            if (next.Length <= spacing) continue;
            if (Math.Abs(Math.Atan2(chord.Cross(next), chord.Dot(next))) > MostTurn) throw DoubleBack(last);
            (last, chord) = (j, next);
        }
    }

    private static NoSolutionException OutOfRange() =>
        new("curve.points-out-of-range", Subject, $"the points lie too close together or too far apart for any sheet");

    private static NoSolutionException Coincide(int index) => new(
        "curve.points-coincide",
        Subject,
        $"points {index} and {index + 1}, counted from 0, lie at one place",
        $"one point at each place");

    private static NoSolutionException DoubleBack(int index) => new(
        "curve.points-double-back",
        Subject,
        $"the points go back on themselves at point {index}, counted from 0",
        $"points in order along the curve, close enough for it to turn less than 120° from one to the next");
}
