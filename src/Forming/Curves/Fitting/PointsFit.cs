using Forming.Results;

namespace Forming.Curves.Fitting;

/// <summary>A curve fitted to measured points: the simplest chain of clothoids that stays within the tolerance.</summary>
/// <param name="Pieces">Pieces in order from the foot of the first point to the foot of the last; curvature runs on from one to the
/// next.</param>
/// <param name="LargestMissMm">The largest distance of a measured point from the curve of these pieces, laid where all points lie nearest
/// [mm].</param>
/// <param name="TurnsRight">Whether the measured curve turns right; the pieces are those of its mirror image.</param>
public sealed record PointsFit(IReadOnlyList<CurvaturePiece> Pieces, double LargestMissMm, bool TurnsRight)
{
    /// <summary>Fewer points do not make a curve.</summary>
    public const int FewestPoints = 4;

    /// <summary>More points take longer than a caller waits, and scanners can thin them out.</summary>
    public const int MostPoints = 5000;

    /// <summary>Fits a curve whose curvature is a broken line over arc length, never of the other sign.</summary>
    /// <param name="points">[4 to 5000] measured points in order along the curve [mm].</param>
    /// <param name="toleranceMm">Largest miss allowed, along the curve's normal [mm], &gt; 0.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>The pieces, all of curvature at least 0, with the largest miss.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate or the tolerance is not finite, or the tolerance not
    /// positive.</exception>
    /// <exception cref="NoSolutionException">
    /// <c>curve.points-too-few</c>, <c>curve.points-too-many</c>, <c>curve.points-coincide</c>, <c>curve.points-double-back</c>,
    /// <c>curve.points-out-of-range</c>: no curve can be read from the points; <c>curve.flat</c>: a straight line fits;
    /// <c>curve.reverses</c>: only a curve that bends both ways fits; <c>curve.points-not-fitted</c>: no curve fits.
    /// </exception>
    /// <remarks>
    /// Gauss–Newton on normal distances, with one curvature or corner more at a time until the tolerance holds, so that scatter
    /// inside the tolerance does not become curvature; of equally many, the curve of least squares. What is flat within the
    /// tolerance comes out flat: see <see cref="CurvaturePiece.IsFlat"/>. Points need to be in order only as far as they scatter.
    /// </remarks>
    public static PointsFit Solve(IReadOnlyList<Point> points, double toleranceMm, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(points);
        var pattern = Pattern.From(points, toleranceMm);
        if (pattern.LargestMissOfALine() <= pattern.Tolerance)
            throw new NoSolutionException("curve.flat", Pattern.Subject, $"a straight line passes all points within the tolerance of {Figure.Length(toleranceMm)}: there is nothing to bend");

        var search = KnotSearch.In(pattern, cancellation);
        var fit = FlatStretches.Level(search.Fewest(), search.Pattern);
        pattern.RefuseDisorder(fit.Feet, pattern.Tolerance);
        return new(
            PiecesOf(fit.Profile, pattern),
            fit.LargestMiss * pattern.Scale,
            search.Pattern.IsMirrored != pattern.IsReversed);
    }

    /// <summary>The spans between knots as pieces, neighbouring flats as one.</summary>
    private static List<CurvaturePiece> PiecesOf(CurvatureProfile profile, Pattern pattern)
    {
        var pieces = new List<CurvaturePiece>();
        for (var m = 0; m < profile.Knots.Length - 1; m++)
        {
            var length = pattern.Scale * (profile.Knots[m + 1] - profile.Knots[m]);
            var piece = new CurvaturePiece(length, profile.Values[m] / pattern.Scale, profile.Values[m + 1] / pattern.Scale);
            if (piece.IsFlat && pieces.Count > 0 && pieces[^1].IsFlat)
                pieces[^1] = pieces[^1] with { LengthMm = pieces[^1].LengthMm + length };
            else
                pieces.Add(piece);
        }

        return pattern.IsReversed
            ? [.. Enumerable.Reverse(pieces).Select(p => p with { StartCurvature = p.EndCurvature, EndCurvature = p.StartCurvature })]
            : pieces;
    }
}
