namespace Forming.Curves.Fitting;

/// <summary>
/// Adds one curvature at a time until a curve that bends one way only passes every point within the tolerance. The curves tried
/// do not depend on the tolerance: one that was found too far off is found again when the tolerance allows for it.
/// </summary>
internal sealed class KnotSearch
{
    private const int MostCurvatures = 32;

    /// <summary>Curves of more curvatures are only found by least squares.</summary>
    private const int MostPolished = 8;

    /// <summary>Least squares may miss by this many times the least miss there is: further off, it is no use to look for that.</summary>
    private const double PolishGain = 1.4;

    /// <summary>A search that has not come this much nearer after some curvatures more follows the scatter.</summary>
    private const double Nearer = 0.98;

    private const int FewestTried = 12;
    private const int Patience = 6;

    /// <summary>Curves with flats and more curvatures and corners than this are not sought beyond an answer.</summary>
    private const int MostWithFlats = 6;

    /// <summary>Misses less alike from point to point than this are scatter, however few the points.</summary>
    private const double MostCorrelation = 0.5;

    /// <summary>
    /// Twice the logarithm of how much likelier the points must be on the curve with flats, for normal scatter: chance alone gives
    /// about 10 with two corners free.
    /// </summary>
    private const double NoDoubt = 25;

    /// <summary>Knots of the curves that show where flats and arcs may be.</summary>
    private static readonly int[] RichCounts = [6, 12];

    private readonly Samples _samples;
    private readonly int _most;
    private readonly double _precision;
    private readonly List<Candidate> _tried = [];

    /// <summary>The curve nearest to the points so far, of either sign: where the next fit starts from.</summary>
    private NormalFit _nearest;

    private ILookup<int, CurvatureProfile>? _chains;

    private KnotSearch(Pattern pattern, Samples samples, NormalFit arc)
    {
        (Pattern, _samples, _nearest) = (pattern, samples, arc);
        _most = Math.Min(MostCurvatures, pattern.Points.Length - 2);
        _precision = PrecisionFor(pattern);
    }

    /// <summary>The points, mirrored where they turn right.</summary>
    public Pattern Pattern { get; }

    /// <summary>Steps below this share of the pattern change no answer: the rounding of the places.</summary>
    /// <param name="pattern">The points.</param>
    public static double PrecisionFor(Pattern pattern) => Math.Max(1e-14, 1e-6 * pattern.Tolerance);

    /// <summary>Starts a search with the arc nearest to the points, seen so that it turns left.</summary>
    /// <param name="pattern">The points.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static KnotSearch In(Pattern pattern, CancellationToken cancellation)
    {
        var samples = Samples.Of(pattern.Points, cancellation);
        var arc = ArcThrough(pattern, samples);
        if (arc.Profile.Values[0] >= 0) return new(pattern, samples, arc);
        var mirrored = pattern.Mirrored();
        samples = Samples.Of(mirrored.Points, cancellation);
        return new(mirrored, samples, ArcThrough(mirrored, samples));
    }

    /// <summary>The curve of fewest curvatures, none of them negative, within the tolerance, measured at each point.</summary>
    /// <exception cref="Results.NoSolutionException"><c>curve.reverses</c>, <c>curve.points-not-fitted</c> and the like.</exception>
    public NormalFit Fewest()
    {
        var arc = Try(_nearest, 1);
        var (answer, count) = (Answer([arc]), 1);
        var (previous, misses) = (arc.OneWay, new List<double> { arc.OneWay.LargestMiss });
        while (answer is null && count < _most && !HasStalled(misses))
        {
            Candidate[] smooth = [.. Smooth(++count, previous)];
            Candidate[] tries = [.. smooth, .. Fitted(ChainsOf(count), count)];
            previous = smooth.Select(t => t.OneWay).MinBy(fit => fit.Sum)!;
            misses.Add(Math.Min(misses[^1], tries.Min(t => t.OneWay.LargestMiss)));
            answer = Answer(tries);
        }

        return answer is not null
            ? WithFlats(answer, count)
            : throw Refusals.For(Pattern, Nearest(), _tried.FirstOrDefault(t => IsWithin(t.Signed))?.Signed);
    }

    /// <summary>
    /// A curve with flats instead of the answer, where the points leave no doubt: a wide tolerance lets one long bend pass for a
    /// short one between flats, which asks for a quite different form.
    /// </summary>
    private NormalFit WithFlats(NormalFit answer, int count)
    {
        var enough = Math.Min(MostCorrelation, 3 / Math.Sqrt(answer.Misses.Length));
        if (answer.SerialCorrelation < enough) return answer;
        var (best, rival) = (answer, answer.Sum);
        for (var more = count; more <= Math.Min(MostWithFlats, _most); more++)
        {
            var chains = ChainsOf(more).Where(chain => chain.HasFlat).ToArray();
            if (chains.Length == 0) continue;
            if (more > count)
                rival = Math.Min(
                    rival, Try(_nearest.Refit(_nearest.Profile.On(KnotPlaces.Even(_nearest, more)), _precision), more).Signed.Sum);
            foreach (var fit in Fitted(chains, more).Select(t => t.OneWay).Where(fit => fit.Sum < rival && IsAnswer(fit)))
            {
                var gain = fit.Misses.Length * Math.Log(best.Sum / fit.Sum);
                if (gain > NoDoubt) best = fit.OneByOne();
            }
        }

        return best;
    }

    private static NormalFit ArcThrough(Pattern pattern, Samples samples)
    {
        var turn = ChordTurn.Of(pattern.Guide, 2);
        return NormalFit.Solve(samples, CurvatureProfile.Arc(1, turn[1]), 0, turn[0], pattern.Feet, PrecisionFor(pattern));
    }

    /// <summary>The clothoid that the chords suggest: the nearest arc is no good start where a curve turns far and opens fast.</summary>
    private NormalFit ClothoidThrough()
    {
        var turn = ChordTurn.Of(Pattern.Guide, 3);
        var guess = CurvatureProfile.Free([0, 1], [turn[1], turn[1] + (2 * turn[2])]);
        return NormalFit.Solve(_samples, guess, 0, turn[0], Pattern.Feet, _precision);
    }

    private static bool HasStalled(List<double> misses) =>
        misses.Count > FewestTried && !(misses[^1] < Nearer * misses[^(Patience + 1)]);

    /// <summary>
    /// Curves that change their curvature evenly: knots among equally many points, and one more where the fit before misses most.
    /// </summary>
    private IEnumerable<Candidate> Smooth(int count, NormalFit previous)
    {
        var even = Try(_nearest.Refit(_nearest.Profile.On(KnotPlaces.Even(_nearest, count)), _precision), count);
        yield return even;
        if (IsAnswer(even.OneWay)) yield break;
        if (count == 2)
            yield return Try(ClothoidThrough(), count);
        else if (KnotPlaces.Split(previous) is { } split)
            yield return Try(previous.Refit(previous.Profile.On(split), _precision), count);
    }

    /// <summary>First guesses at curves of flats and arcs.</summary>
    private IEnumerable<CurvatureProfile> ChainsOf(int count)
    {
        _chains ??= Chains.From([.. RichCounts.Where(knots => knots <= Pattern.Points.Length / 2)
            .Select(knots => _nearest.Refit(_nearest.Profile.On(KnotPlaces.Even(_nearest, knots)), _precision))]);
        return _chains[count];
    }

    private IEnumerable<Candidate> Fitted(IEnumerable<CurvatureProfile> chains, int count)
    {
        var start = _nearest;
        return chains.Select(chain => Try(start.Refit(chain, _precision), count));
    }

    private Candidate Try(NormalFit fit, int count)
    {
        if (fit.Sum < _nearest.Sum) _nearest = fit;
        var candidate = new Candidate(fit, OneWay.From(fit, _precision), count);
        _tried.Add(candidate);
        return candidate;
    }

    private bool IsWithin(NormalFit fit) => fit.LargestMiss <= Pattern.Tolerance && fit.OneByOne().LargestMiss <= Pattern.Tolerance;

    private bool IsAnswer(NormalFit fit) => OneWay.Bends(fit) && IsWithin(fit);

    /// <summary>The best curve within the tolerance: the least squares, or one that gives way to the worst points.</summary>
    private NormalFit? Answer(IReadOnlyCollection<Candidate> tries)
    {
        var fit = tries.Select(t => t.OneWay).Where(IsAnswer).MinBy(fit => fit.Sum)
            ?? tries.Where(t => t.Count <= MostPolished && t.OneWay.LargestMiss <= PolishGain * Pattern.Tolerance && OneWay.Bends(t.OneWay))
                .Select(t => Minimax.From(t.OneWay, IsWithin)).Where(IsWithin).MinBy(fit => fit.Unweighted);
        return fit?.OneByOne();
    }

    /// <summary>The curve tried that comes nearest to every point, and the tolerance with which it would be the answer.</summary>
    private (NormalFit Fit, double Tolerance)? Nearest()
    {
        (NormalFit Fit, double Tolerance)? nearest = null;
        foreach (var tried in _tried.Where(t => OneWay.Bends(t.OneWay)).OrderBy(t => t.OneWay.LargestMiss))
        {
            var miss = tried.OneWay.LargestMiss;
            if (!double.IsFinite(miss) || miss / PolishGain >= nearest?.Tolerance) break;
            var fit = tried.Count <= MostPolished ? Minimax.From(tried.OneWay, _ => false) : tried.OneWay;
            var exact = fit.OneByOne();
            var tolerance = Math.Max(Math.Max(fit.LargestMiss, exact.LargestMiss), tried.Count <= MostPolished ? miss / PolishGain : miss);
            if (!(tolerance >= nearest?.Tolerance)) nearest = (exact, tolerance);
        }

        return nearest;
    }
}

/// <summary>A curve of one search.</summary>
/// <param name="Signed">The nearest curve on its knots, of either sign.</param>
/// <param name="OneWay">The nearest that bends one way only: the same where that already does.</param>
/// <param name="Count">How many curvatures and places of knots were chosen.</param>
internal sealed record Candidate(NormalFit Signed, NormalFit OneWay, int Count);

/// <summary>Takes out of a fit what bends the other way.</summary>
internal static class OneWay
{
    /// <summary>The nearest curve on the same knots without negative curvature: a straight line when nothing is left that bends.</summary>
    /// <param name="fit">A fit that may bend both ways.</param>
    /// <param name="precision">Steps smaller than this end a fit.</param>
    /// <remarks>Least squares with sign limits by active sets: negative curvatures are held at 0 and the rest fitted again, until none is
    /// left.</remarks>
    public static NormalFit From(NormalFit fit, double precision)
    {
        while (fit.Profile.Values.Min() < 0)
        {
            var values = fit.Profile.Values;
            fit = fit.Refit(fit.Profile.Flattened(k => values[k] < 0), precision);
        }

        return fit;
    }

    /// <summary>Whether a fit bends, and one way only.</summary>
    /// <param name="fit">The fit.</param>
    public static bool Bends(NormalFit fit) => fit.Profile.Values.Min() >= 0 && fit.Profile.Peak > 0;
}
