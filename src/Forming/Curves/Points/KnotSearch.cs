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
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="Results.NoSolutionException"><c>curve.reverses</c> or <c>curve.points-not-fitted</c>.</exception>
    public NormalFit Fewest(CancellationToken cancellation)
    {
        var best = _nearest;
        if (IsAnswer(best)) return best;
        var (previous, last) = (best, _most);
        for (var count = 2; count <= last; count++)
        {
            cancellation.ThrowIfCancellationRequested();
            var fit = BentOneWay(_nearest.Refit(_nearest.Profile.On(KnotPlaces.Even(_nearest, count)), _precision));
            if (IsAnswer(fit)) return fit;
            var second = SecondTry(count, previous);
            if (IsAnswer(second)) return second;
            fit = Nearer(fit, second);
            (previous, best) = (fit, Nearer(best, fit));
            if (_signed is not null) last = Math.Min(last, _signed.Profile.UnknownCount + Patience);
        }

        throw Refusals.For(Pattern, best, _signed);
    }

    private static NormalFit ArcThrough(Pattern pattern)
    {
        var turn = ChordTurn.Of(pattern, 2);
        return NormalFit.Solve(pattern.Points, CurvatureProfile.Arc(1, turn[1]), 0, turn[0], pattern.Chords, PrecisionFor(pattern));
    }

    /// <summary>The clothoid that the chords suggest: the nearest arc is no good start where a curve turns far and opens fast.</summary>
    private static NormalFit ClothoidThrough(Pattern pattern)
    {
        var turn = ChordTurn.Of(pattern, 3);
        var guess = CurvatureProfile.Free([0, 1], [turn[1], turn[1] + (2 * turn[2])]);
        return NormalFit.Solve(pattern.Points, guess, 0, turn[0], pattern.Chords, PrecisionFor(pattern));
    }

    private static NormalFit Nearer(NormalFit one, NormalFit other) => other.Sum < one.Sum ? other : one;

    private bool IsWithin(NormalFit fit) => fit.LargestMiss <= Pattern.Tolerance;

    private bool IsAnswer(NormalFit fit) => IsWithin(fit) && OneWay.Bends(fit);

    /// <summary>As many curvatures, found another way: from the chords, or by one knot more where the fit before misses most.</summary>
    private NormalFit SecondTry(int count, NormalFit previous)
    {
        if (count == 2) return BentOneWay(ClothoidThrough(Pattern));
        return KnotPlaces.Split(previous, Pattern.Tolerance) is { } split
            ? BentOneWay(previous.Refit(previous.Profile.On(split), _precision))
            : previous;
    }

    /// <summary>The fit itself until it is within the tolerance, then the one on its knots that never bends the other way.</summary>
    private NormalFit BentOneWay(NormalFit fit)
    {
        _nearest = Nearer(_nearest, fit);
        if (!IsWithin(fit)) return fit;
        var oneWay = OneWay.From(fit, _precision);
        if (!IsAnswer(oneWay)) _signed ??= fit;
        return oneWay;
    }
}
