using Forming.Learning;
using Forming.Materials;
using Forming.Springback;

namespace Forming.TestStrips;

/// <summary>The effective yield stress that explains a set of strips best, by least squares through the bending law.</summary>
/// <remarks>
/// One unknown, taken as ln Y. A strip's residual is the logarithm of measured over expected finished mid-surface radius, for a radius
/// is read to a share of itself; near the radius at which the strip stays flat the expected one runs to infinity.
/// The interval is the profile of the sum of squares, <c>S(Y) - S(best) &lt;= margin²</c>: exact for one strip, and it does not lean
/// on a tangent where the law bends away from it.
/// </remarks>
internal sealed class YieldFit
{
    // Below this a sheet springs back by less than any reading shows.
    private const double LeastMpa = 1e-3;

    private const double Step = 1e-6;

    private readonly Sheet[] _sheets;
    private readonly IReadOnlyList<SpringbackStrip> _strips;
    private readonly CancellationToken _cancellation;
    private readonly double _lowest;
    private readonly double _highest;

    private YieldFit(Material material, IReadOnlyList<SpringbackStrip> strips, double readingError, CancellationToken cancellation)
    {
        _cancellation = cancellation;
        _strips = strips;
        _sheets = [.. strips.Select(strip => new Sheet(material, strip.ThicknessMm))];
        // At this yield the first strip would stay elastic, so the truth lies below it.
        var flat = Enumerable.Range(0, strips.Count).Min(i =>
            material.YieldMpa * strips[i].LoadedCurvature / BendingLaw.Of(_sheets[i]).YieldCurvature);
        _lowest = Math.Log(LeastMpa);
        _highest = Math.Log(flat);
        Single = [.. Enumerable.Range(0, strips.Count).Select(SolveSingle)];
        var best = strips.Count == 1 ? Single[0] : Bisection.Solve(Score, Single.Min(), Math.Min(_highest, Single.Max()));
        Residuals = [.. Enumerable.Range(0, strips.Count).Select(i => Residual(i, best))];
        SumOfSquares = Residuals.Sum(residual => residual * residual);
        Margin = Margin.Of(SumOfSquares, strips.Count - 1, readingError);
        Sensitivities = [.. Enumerable.Range(0, strips.Count).Select(i => Slope(i, best))];
        YieldMpa = Math.Exp(best);
        Bounds = new(YieldMpa, LowOf(best), Math.Exp(Bisection.Solve(Excess, best, _highest)));
    }

    /// <summary>The yield stress [MPa].</summary>
    public double YieldMpa { get; }

    /// <summary>The same with its interval.</summary>
    public Interval Bounds { get; }

    /// <summary>ln(measured/expected finished radius), strip by strip.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Growth of ln(expected finished radius) with ln(yield), strip by strip.</summary>
    public IReadOnlyList<double> Sensitivities { get; }

    /// <summary>ln of the yield stress [MPa] with which each strip alone agrees.</summary>
    public IReadOnlyList<double> Single { get; }

    /// <summary>Sum of the squared residuals.</summary>
    public double SumOfSquares { get; }

    /// <summary>How far a single finished radius may be from the expected one, as a share.</summary>
    public Margin Margin { get; }

    /// <summary>Fits strips of one material.</summary>
    /// <param name="material">Their material; its hardening keeps its shape.</param>
    /// <param name="strips">The strips, each finished to a larger radius than its form's.</param>
    /// <param name="readingError">Half-width within which 95 % of radii are read, as a share.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static YieldFit Of(
        Material material, IReadOnlyList<SpringbackStrip> strips, double readingError, CancellationToken cancellation) =>
        new(material, strips, readingError, cancellation);

    /// <summary>
    /// ln of finished over formed radius, both of the mid surface, by a yield stress; infinite where the strip stays elastic.
    /// </summary>
    /// <param name="sheet">The strip's sheet.</param>
    /// <param name="loadedCurvature">Curvature under load [1/mm].</param>
    /// <param name="lnYield">ln of the yield stress [MPa].</param>
    public static double Opening(Sheet sheet, double loadedCurvature, double lnYield)
    {
        var left = BendingLaw.WithYield(sheet, Math.Exp(lnYield)).Release(loadedCurvature);
        return left > 0 ? Math.Log(loadedCurvature / left) : double.PositiveInfinity;
    }

    /// <summary>Growth of <see cref="Opening"/> with ln of the yield stress; infinite where the strip stays elastic.</summary>
    /// <param name="sheet">The strip's sheet.</param>
    /// <param name="loadedCurvature">Curvature under load [1/mm].</param>
    /// <param name="lnYield">ln of the yield stress [MPa].</param>
    /// <remarks>Taken from below, for just above lies the yield at which the strip stays elastic.</remarks>
    public static double Sensitivity(Sheet sheet, double loadedCurvature, double lnYield) =>
        (Opening(sheet, loadedCurvature, lnYield) - Opening(sheet, loadedCurvature, lnYield - Step)) / Step;

    /// <summary>The yield stresses with which one strip alone agrees within a share of its radius, as logarithms.</summary>
    /// <param name="i">Place of the strip.</param>
    /// <param name="share">Share to either side, &gt; 0.</param>
    public (double Low, double High) SingleWithin(int i, double share)
    {
        var flat = FlatAt(i);
        return (
            Bisection.Solve(at => share - Residual(i, at), _lowest, flat),
            Bisection.Solve(at => -share - Residual(i, at), _lowest, flat));
    }

    private double Residual(int i, double lnYield) =>
        Math.Log(_strips[i].LoadedCurvature / _strips[i].FinishedCurvature) - Opening(_sheets[i], _strips[i].LoadedCurvature, lnYield);

    private double Slope(int i, double lnYield) => Sensitivity(_sheets[i], _strips[i].LoadedCurvature, lnYield);

    private double SolveSingle(int i)
    {
        _cancellation.ThrowIfCancellationRequested();
        return Bisection.Solve(at => -Residual(i, at), _lowest, FlatAt(i));
    }

    // At this yield the strip would stay elastic.
    private double FlatAt(int i) =>
        Math.Log(_sheets[i].Material.YieldMpa * _strips[i].LoadedCurvature / BendingLaw.Of(_sheets[i]).YieldCurvature);

    private double Score(double lnYield)
    {
        _cancellation.ThrowIfCancellationRequested();
        var score = 0.0;
        for (var i = 0; i < _strips.Count; i++)
        {
            var slope = Slope(i, lnYield);
            if (!double.IsFinite(slope))
                return double.PositiveInfinity;
            score -= Residual(i, lnYield) * slope;
        }

        return score;
    }

    private double Excess(double lnYield)
    {
        _cancellation.ThrowIfCancellationRequested();
        var sum = 0.0;
        for (var i = 0; i < _strips.Count; i++)
        {
            var residual = Residual(i, lnYield);
            sum += residual * residual;
        }

        return sum - SumOfSquares - (Margin.Half * Margin.Half);
    }

    private double? LowOf(double best) =>
        Excess(_lowest) > 0 ? Math.Exp(-Bisection.Solve(negative => Excess(-negative), -best, -_lowest)) : null;
}
