namespace Forming.Curves.Points;

/// <summary>Adds one curvature at a time until a curve that bends one way only passes every point within the tolerance.</summary>
internal sealed class KnotSearch
{
    private const int MostCurvatures = 32;

    /// <summary>How many more curvatures a curve of one sign may need than one that reverses, before reversing is taken as real.</summary>
    private const int Patience = 8;

    private readonly int _most;
    private readonly double _precision;

    /// <summary>The curve nearest to the points so far, of either sign: where the next fit starts from.</summary>
    private NormalFit _nearest;

    /// <summary>The first curve within the tolerance, if it bends both ways.</summary>
    private NormalFit? _signed;

    private KnotSearch(Pattern pattern, NormalFit arc)
    {
        (Pattern, _nearest) = (pattern, arc);
        _most = Math.Min(MostCurvatures, pattern.Points.Length - 2);
        _precision = PrecisionFor(pattern);
    }

    /// <summary>The points, mirrored where they turn right.</summary>
    public Pattern Pattern { get; }

    /// <summary>Steps below this share of the tolerance change no answer; the floor is the rounding of the places.</summary>
    /// <param name="pattern">The points.</param>
    public static double PrecisionFor(Pattern pattern) => Math.Max(1e-14, 1e-6 * pattern.Tolerance);

    /// <summary>Starts a search with the arc nearest to the points, seen so that it turns left.</summary>
    /// <param name="pattern">The points.</param>
    public static KnotSearch In(Pattern pattern)
    {
        var arc = ArcThrough(pattern);
        if (arc.Profile.Values[0] >= 0) return new(pattern, arc);
        var mirrored = pattern.Mirrored();
        return new(mirrored, ArcThrough(mirrored));
    }

    /// <summary>The curve of fewest curvatures, none of them negative, within the tolerance.</summary>
    /// <exception cref="Results.NoSolutionException"><c>curve.reverses</c> or <c>curve.points-not-fitted</c>.</exception>
    public NormalFit Fewest()
    {
        var best = _nearest;
        if (IsWithin(best) && best.Profile.Peak > 0) return best;
        var (previous, last) = (best, _most);
        for (var count = 2; count <= last; count++)
        {
            var fit = OneSidedOn(KnotPlaces.Even(_nearest, count), _nearest);
            if (!IsWithin(fit) && KnotPlaces.Split(previous, Pattern.Tolerance) is { } split)
                fit = Nearer(fit, OneSidedOn(split, previous));
            if (IsWithin(fit)) return fit;
            (previous, best) = (fit, Nearer(best, fit));
            if (_signed is not null) last = Math.Min(last, _signed.Profile.UnknownCount + Patience);
        }

        throw Refusals.For(Pattern, best, _signed);
    }

    private static NormalFit ArcThrough(Pattern pattern)
    {
        var (angle, curvature) = ChordTurn.Of(pattern);
        return NormalFit.Solve(pattern.Points, CurvatureProfile.Arc(1, curvature), 0, angle, pattern.Chords, PrecisionFor(pattern));
    }

    private static NormalFit Nearer(NormalFit one, NormalFit other) => other.Sum < one.Sum ? other : one;

    private bool IsWithin(NormalFit fit) => fit.LargestMiss <= Pattern.Tolerance;

    /// <summary>The fit on these knots; once a fit of either sign is within the tolerance, the one that never bends the other way.</summary>
    private NormalFit OneSidedOn(double[] knots, NormalFit start)
    {
        var fit = start.Refit(start.Profile.On(knots), _precision);
        _nearest = Nearer(_nearest, fit);
        if (!IsWithin(fit)) return fit;
        var oneSided = OneSided.From(fit, _precision);
        if (oneSided is null || !IsWithin(oneSided)) _signed ??= fit;
        return oneSided ?? start;
    }
}
