using System.Runtime.Intrinsics;
using Forming.Curves;
using Forming.Numerics;
using Forming.Springback;

namespace Forming.Contact;

/// <summary>Part of a bend of changing radius, as Chebyshev series of its turn, length and place.</summary>
/// <remarks>
/// Everything here is smooth in the span's parameter, so a few dozen terms give full precision, and the series are
/// integrated term by term. The four running values share one recurrence: turn, mid-surface length, x, y.
/// </remarks>
internal sealed class SeriesPiece : ContactPiece
{
    private const int MostTerms = 128;
    private const double Resolved = 1e-13;

    /// <summary>A piece below this share of its bend is taken as it is: a kink inside it would be halved for ever. An assumption.</summary>
    private const double LeastShare = 1e-3;

    private readonly BendSpan _span;
    private readonly FormingRule _rule;
    private readonly double _from;
    private readonly double _share;
    private readonly double _midBefore;
    private readonly Vector256<double>[] _growth;
    private readonly Vector128<double>[] _rates; // turn, mid-surface length

    private SeriesPiece(
        BendSpan span, FormingRule rule, double from, double share, double midBefore, Vector256<double>[] growth, Vector128<double>[] rates)
    {
        _span = span;
        _rule = rule;
        _from = from;
        _share = share;
        _midBefore = midBefore;
        _growth = growth;
        _rates = rates;
        var whole = At(1);
        Turn = whole.Turn;
        Mid = whole.Mid;
    }

    public override double Turn { get; }

    public override double Mid { get; }

    public override IEnumerable<double> InnerPeaks => _span.InnerPeaks.Select(peak => (peak - _from) / _share).Where(u => u is > 0 and < 1);

    /// <summary>Solves a bend on the form, in as many pieces as its series need.</summary>
    /// <param name="span">The bend on the mid surface.</param>
    /// <param name="rule">From finished to formed curvature.</param>
    /// <param name="thickness">The panel's thickness [mm].</param>
    /// <param name="midBefore">Mid-surface length of the curve before the bend [mm].</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static IEnumerable<SeriesPiece> Solve(
        BendSpan span, FormingRule rule, double thickness, double midBefore, CancellationToken cancellation) =>
        Solve(span, rule, thickness, midBefore, 0, 1, cancellation);

    private static IEnumerable<SeriesPiece> Solve(
        BendSpan span, FormingRule rule, double thickness, double midBefore, double from, double share, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        for (var terms = 16; terms <= MostTerms; terms *= 2)
        {
            var piece = TrySolve(span, rule, thickness, midBefore, from, share, terms, out var isResolved);
            if (isResolved || (terms == MostTerms && share < LeastShare))
                return [piece];
        }

        var first = Solve(span, rule, thickness, midBefore, from, share / 2, cancellation).ToList();
        var second = Solve(span, rule, thickness, midBefore + first.Sum(piece => piece.Mid), from + (share / 2), share / 2, cancellation);
        return first.Concat(second);
    }

    private static SeriesPiece TrySolve(
        BendSpan span, FormingRule rule, double thickness, double midBefore, double from, double share, int terms, out bool isResolved)
    {
        var nodes = Chebyshev.Nodes(terms);
        var spanRates = new SpanRates[terms + 1];
        var mid = new double[terms + 1];
        for (var j = 0; j <= terms; j++)
        {
            spanRates[j] = span.RatesAt(from + (share * nodes[j]));
            mid[j] = share * spanRates[j].Length;
        }

        var midRate = Chebyshev.Fit(mid, out var isMidResolved, Resolved);
        var midGrowth = Chebyshev.Integrate(midRate);

        var turn = new double[terms + 1];
        for (var j = 0; j <= terms; j++)
        {
            var at = rule.KeepsArcs ? 0 : midBefore + Chebyshev.Evaluate(midGrowth, nodes[j]);
            turn[j] = mid[j] * rule.StateFor(spanRates[j].Curvature, at).Curvature;
        }

        var turnRate = Chebyshev.Fit(turn, out var isTurnResolved, Resolved);
        var turnGrowth = Chebyshev.Integrate(turnRate);

        double[] x = new double[terms + 1], y = new double[terms + 1];
        for (var j = 0; j <= terms; j++)
        {
            var contact = mid[j] - (thickness / 2 * turn[j]);
            var (sin, cos) = Math.SinCos(Chebyshev.Evaluate(turnGrowth, nodes[j]));
            x[j] = contact * cos;
            y[j] = contact * sin;
        }

        var xGrowth = Chebyshev.Integrate(Chebyshev.Fit(x, out var isXResolved, Resolved));
        var yGrowth = Chebyshev.Integrate(Chebyshev.Fit(y, out var isYResolved, Resolved));
        isResolved = isMidResolved && isTurnResolved && isXResolved && isYResolved;

        var growth = new Vector256<double>[terms + 2];
        var rates = new Vector128<double>[terms + 1];
        for (var k = 0; k <= terms + 1; k++)
            growth[k] = Vector256.Create(turnGrowth[k], midGrowth[k], xGrowth[k], yGrowth[k]);
        for (var k = 0; k <= terms; k++)
            rates[k] = Vector128.Create(turnRate[k], midRate[k]);
        return new(span, rule, from, share, midBefore, growth, rates);
    }

    public override PieceGrowth At(double u)
    {
        var x = (2 * u) - 1;
        Vector256<double> b1 = default, b2 = default;
        for (var k = _growth.Length - 1; k > 0; k--)
            (b1, b2) = (_growth[k] + ((2 * x) * b1) - b2, b1);
        var value = _growth[0] + (x * b1) - b2;
        return new(value[0], value[1], new(value[2], value[3]));
    }

    public override double ParameterAt(CurveMeasure measure, double value)
    {
        double low = 0, high = 1;
        var u = Math.Clamp(value / Total(measure), 0, 1);
        for (var i = 0; i < 60; i++)
        {
            var at = At(u);
            var excess = measure.Of(at.Turn, at.Mid) - value;
            if (excess > 0)
                high = u;
            else
                low = u;
            var rate = RatesAt(u);
            var next = u - (excess / measure.Of(rate[0], rate[1]));
            if (Math.Abs(next - u) <= 1e-9)
                return Math.Clamp(next, 0, 1); // the next step would be the square of this one
            u = next > low && next < high ? next : (low + high) / 2;
        }

        return u;
    }

    public override double FinishedCurvatureAt(double u) => _span.RatesAt(_from + (_share * u)).Curvature;

    public override BentState StateAt(double u) => _rule.StateFor(FinishedCurvatureAt(u), _midBefore + At(u).Mid);

    private Vector128<double> RatesAt(double u)
    {
        var x = (2 * u) - 1;
        Vector128<double> b1 = default, b2 = default;
        for (var k = _rates.Length - 1; k > 0; k--)
            (b1, b2) = (_rates[k] + ((2 * x) * b1) - b2, b1);
        return _rates[0] + (x * b1) - b2;
    }
}

/// <summary>What has grown since the start of a piece.</summary>
/// <param name="Turn">Turned angle under load [rad].</param>
/// <param name="Mid">Mid-surface length [mm].</param>
/// <param name="Position">Place on the contact curve in the piece's own frame [mm].</param>
internal readonly record struct PieceGrowth(double Turn, double Mid, Point Position);
