using Forming.Results;

namespace Forming.Curves.Fitting;

/// <summary>
/// Measured points made ready for a fit: the first at the origin, lengths relative to the broken line through them, so that
/// every limit further on is a plain number.
/// </summary>
/// <param name="Points">[n] relative points.</param>
/// <param name="Guide">The broken line, its lengths counted from the first point.</param>
/// <param name="Feet">[n] length of the broken line up to each point, as a first guess of the curve's; the last is 1.</param>
/// <param name="Tolerance">Largest miss allowed, relative.</param>
/// <param name="Scale">What one unit stands for [mm].</param>
/// <param name="First">The point at the origin as it was measured [mm].</param>
/// <param name="IsReversed">Whether the points are in the opposite order.</param>
/// <param name="IsMirrored">Whether left and right are exchanged.</param>
internal sealed record Pattern(
    Point[] Points, Guide Guide, double[] Feet, double Tolerance, double Scale, Point First, bool IsReversed, bool IsMirrored)
{
    /// <summary>The contract's name for these points.</summary>
    public const string Subject = "panel.curve.points";

    /// <summary>
    /// Points closer than this share of the pattern are one point: beyond it, rounding of the coordinates would turn chords.
    /// </summary>
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
    /// <exception cref="ArgumentOutOfRangeException">A coordinate or the tolerance is not finite, or the tolerance not
    /// positive.</exception>
    /// <exception cref="NoSolutionException">Too few or too many points, points that coincide or go back, a size no sheet has.</exception>
    public static Pattern From(IReadOnlyList<Point> points, double toleranceMm)
    {
        RefuseCount(points.Count);
        RefuseNonFinite(points, toleranceMm);
        var largest = points.Max(p => Math.Max(Math.Abs(p.X), Math.Abs(p.Y)));
        if (largest == 0) throw Coincide(1);
        var relative = new Point[points.Count];
        for (var j = 0; j < relative.Length; j++)
            relative[j] = new((points[j].X / largest) - (points[0].X / largest), (points[j].Y / largest) - (points[0].Y / largest));

        var isReversed = EndsFartherOut(relative);
        if (isReversed)
        {
            var last = relative[^1];
            relative = [.. relative.Reverse().Select(p => p - last)];
        }

        var guide = Guide.Through(relative);
        var feet = guide.LengthsAt(relative.Length);
        var total = feet[^1] - feet[0];
        if (total < SamePlace * SamePlace) throw Coincide(1);
        var scale = largest * total;
        if (!(scale < LargestScale && scale > 1 / LargestScale)) throw OutOfRange();
        guide = guide.Scaled(1 / total, feet[0]);
        var first = feet[0];
        for (var j = 0; j < relative.Length; j++) (relative[j], feet[j]) = (1 / total * relative[j], (feet[j] - first) / total);

        var pattern = new Pattern(
            relative, guide, feet, toleranceMm / scale, scale, isReversed ? points[^1] : points[0], isReversed, false);
        pattern.RefuseCoincidence();
        pattern.RefuseTurningBack();
        return pattern;
    }

    /// <summary>The same points with left and right exchanged.</summary>
    public Pattern Mirrored() => this with
    {
        Points = Array.ConvertAll(Points, Mirror),
        Guide = Guide with { Corners = Array.ConvertAll(Guide.Corners, Mirror) },
        IsMirrored = !IsMirrored,
    };

    /// <summary>The number by which the shop knows a point: its place in the list as it was given, counted from 1.</summary>
    /// <param name="index">Index among these points.</param>
    public int NumberOf(int index) => IsReversed ? Points.Length - index : index + 1;

    /// <summary>A relative place as it would have been measured [mm].</summary>
    /// <param name="place">The relative place.</param>
    public Point Measured(Point place) => First + (Scale * (IsMirrored ? Mirror(place) : place));

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

    /// <summary>Refuses points whose feet on a curve go back along it further than scatter of this size lets them.</summary>
    /// <param name="feet">[n] arc lengths of the points' feet, relative.</param>
    /// <param name="scatter">How far a point may lie beside its place, relative.</param>
    /// <exception cref="NoSolutionException"><c>curve.points-double-back</c>.</exception>
    public void RefuseDisorder(double[] feet, double scatter)
    {
        var farthest = 0;
        for (var j = 1; j < feet.Length; j++)
        {
            if (feet[j] > feet[farthest]) farthest = j;
            if (feet[farthest] - feet[j] > LongChord * scatter) throw DoubleBack(farthest, j);
        }
    }

    /// <summary>
    /// Whether the last point lies farther from the middle than the first: a curve is sought from that end, whichever way it was measured.
    /// </summary>
    private static bool EndsFartherOut(Point[] points)
    {
        var centre = 1.0 / points.Length * points.Aggregate(Point.Origin, (sum, p) => sum + p);
        return (points[^1] - centre).Length > (1 + SamePlace) * (points[0] - centre).Length;
    }

    private static Point Mirror(Point place) => new(place.X, -place.Y);

    private static FormattableString Allowed => $"{PointsFit.FewestPoints} to {PointsFit.MostPoints} points";

    private static void RefuseCount(int count)
    {
        if (count < PointsFit.FewestPoints)
            throw new NoSolutionException("curve.points-too-few", Subject, $"{count} measured points do not make a curve", Allowed);
        if (count > PointsFit.MostPoints)
            throw new NoSolutionException("curve.points-too-many", Subject, $"{count} measured points are more than a curve takes", Allowed);
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
        var places = 1;
        for (var j = 1; j < Points.Length; j++)
            if ((Points[j] - Points[j - 1]).Length > SamePlace) places++;
        if (places < PointsFit.FewestPoints) throw Coincide(places);
    }

    private void RefuseTurningBack()
    {
        var spacing = LongChord * Tolerance;
        var (corners, last, chord) = (Guide.Corners, 0, default(Point));
        for (var j = 1; j < corners.Length; j++)
        {
            var next = corners[j] - corners[last];
            if (next.Length <= spacing) continue;
            if (Math.Abs(Math.Atan2(chord.Cross(next), chord.Dot(next))) > MostTurn && last > 0)
                throw DoubleBack((int)Guide.Places[last], (int)Guide.Places[j]);
            (last, chord) = (j, next);
        }
    }

    private static NoSolutionException OutOfRange() =>
        new("curve.points-out-of-range", Subject, $"the points lie too close together or too far apart for any sheet");

    private static NoSolutionException Coincide(int places) => new(
        "curve.points-coincide",
        Subject,
        $"the points lie at fewer than {PointsFit.FewestPoints} different places ({places})",
        $"at least {PointsFit.FewestPoints} points at different places along the curve");

    private NoSolutionException DoubleBack(int one, int next) => new(
        "curve.points-double-back",
        Subject,
        $"point {Math.Max(NumberOf(one), NumberOf(next))} turns back on point {Math.Min(NumberOf(one), NumberOf(next))} (counted from 1): list the points in order along the curve",
        $"points in order along the curve, close enough for it to turn less than 120° from one to the next");
}
