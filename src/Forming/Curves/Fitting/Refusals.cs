using Forming.Results;

namespace Forming.Curves.Fitting;

/// <summary>Why no curve was found, in words for the shop.</summary>
internal static class Refusals
{
    private const int PointsThatShowABend = 3;

    /// <summary>A tolerance this much wider than the nearest miss surely lets that curve pass, whatever digits it is said with.</summary>
    private const double Room = 1.002;

    /// <summary>The reason: the curve reverses, the points are out of order, or nothing fits.</summary>
    /// <param name="pattern">The points.</param>
    /// <param name="nearest">The nearest curve found, and the tolerance that would let it pass; null if none was.</param>
    /// <param name="signed">A curve within the tolerance that bends both ways, if there is one.</param>
    public static NoSolutionException For(Pattern pattern, (NormalFit Fit, double Tolerance)? nearest, NormalFit? signed)
    {
        if (signed is not null && Reversal(signed, pattern.Tolerance) is { } place)
            return Reverses(pattern, pattern.IsReversed ? signed.Profile.Length - place : place, signed.PlaceAt(place));
        if (nearest is not { } found)
            return NotFollowed();
        pattern.RefuseDisorder(found.Fit.Feet, Math.Max(found.Tolerance, pattern.Tolerance));
        return found.Tolerance * Room < pattern.LargestMissOfALine()
            ? NotFitted(pattern, found.Fit, found.Tolerance)
            : Straight(pattern);
    }

    /// <summary>
    /// Arc length at which the curve takes up its most pronounced stretch of negative curvature (or leaves it, if it starts with it);
    /// null when there is none to speak of: the sagitta, turn × length / 8 as for an arc, must pass the tolerance, and at least three
    /// points must be in the stretch, as fewer do not show a bend.
    /// </summary>
    private static double? Reversal(NormalFit fit, double tolerance)
    {
        var (largest, place, from) = (tolerance, (double?)null, 0.0);
        foreach (var (at, turn) in Stretches(fit.Profile))
        {
            var sagitta = -turn * (at - from) / 8;
            if (sagitta > largest && IsSeen(fit.Feet, from, at)) (largest, place) = (sagitta, from > 0 ? from : at);
            from = at;
        }

        return place;
    }

    private static bool IsSeen(double[] feet, double from, double to) => feet.Count(s => s >= from && s <= to) >= PointsThatShowABend;

    /// <summary>Ends of the stretches of one sign, with the turn made in each [rad].</summary>
    private static List<(double At, double Turn)> Stretches(CurvatureProfile profile)
    {
        var ends = new List<(double At, double Turn)>();
        var turn = 0.0;
        for (var m = 0; m < profile.Knots.Length - 1; m++)
        {
            var (width, a, b) = (profile.Knots[m + 1] - profile.Knots[m], profile.Values[m], profile.Values[m + 1]);
            var isCrossing = a * b < 0 || (b == 0 && a != 0);
            var before = isCrossing ? a / (a - b) * width : width;
            turn += before * (isCrossing ? a : a + b) / 2;
            if (!isCrossing) continue;
            ends.Add((profile.Knots[m] + before, turn));
            turn = (width - before) * b / 2;
        }

        ends.Add((profile.Length, turn));
        return ends;
    }

    private static NoSolutionException Reverses(Pattern pattern, double s, Point relative)
    {
        var place = pattern.Measured(relative);
        return new(
            "curve.reverses",
            Pattern.Subject,
            $"the curve reverses {Figure.Length(s * pattern.Scale)} along from the first point, at ({Figure.Length(place.X)}, {Figure.Length(place.Y)}); it needs one form for each side",
            $"points of one direction of bend only");
    }

    private static NoSolutionException NotFitted(Pattern pattern, NormalFit fit, double tolerance)
    {
        var reachable = RoundedUp(Room * tolerance * pattern.Scale);
        return new(
            "curve.points-not-fitted",
            Pattern.Subject,
            $"no smooth curve that bends one way passes all points within {Figure.Length(pattern.Tolerance * pattern.Scale)}: the nearest misses by {Figure.Length(reachable)}, at point {pattern.NumberOf(fit.Worst)} (counted from 1)",
            $"a tolerance of {Figure.Length(reachable)}, or a corrected point");
    }

    private static NoSolutionException Straight(Pattern pattern) => new(
        "curve.points-not-fitted",
        Pattern.Subject,
        $"the points scatter by {Figure.Length(pattern.LargestMissOfALine() * pattern.Scale)} about a straight line, and no bend is nearer to them",
        $"points that show the bend more clearly than they scatter");

    private static NoSolutionException NotFollowed() => new(
        "curve.points-not-fitted",
        Pattern.Subject,
        $"no smooth curve that bends one way follows the points",
        $"points in order along the curve, close enough for it to turn less than 120° from one to the next");

    /// <summary>Two digits, rounded up: what is said can be asked for.</summary>
    private static double RoundedUp(double length)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(length)) - 1);
        return Math.Ceiling(length / unit) * unit;
    }
}
