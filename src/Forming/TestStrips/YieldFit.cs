using Forming.Learning;

namespace Forming.TestStrips;

/// <summary>The effective yield stress that explains a set of strips best, by least squares, without regard to the grade.</summary>
/// <remarks>
/// One unknown, ln(yield factor). A radius counts by the logarithm of measured over expected mid-surface radius, for a radius is read to a
/// share of itself; near the radius at which the strip stays flat the expected one runs to infinity. Residuals are in reading errors.
/// The interval is the profile of the sum of squares, <c>S(Y) - S(best) &lt;= margin²</c>: exact for one reading, and it does not lean
/// on a tangent where the law bends away from it.
/// </remarks>
internal sealed class YieldFit
{
    // Below this a sheet springs back by less than any reading shows.
    private const double LeastMpa = 1e-3;

    private const double Step = 1e-6;

    private readonly CancellationToken _cancellation;
    private readonly double _lowest;
    private readonly double _highest;

    private YieldFit(IReadOnlyList<StripReading> readings, double nominalMpa, CancellationToken cancellation)
    {
        _cancellation = cancellation;
        (Readings, NominalMpa) = (readings, nominalMpa);
        _lowest = Math.Log(LeastMpa / nominalMpa);
        // At this yield the first strip would stay elastic, so the truth lies below it.
        _highest = readings.Min(reading => reading.Pull.LnFlat);
        Each = [.. readings.Select(reading => BestOf([reading]))];
        LnFactor = readings.Count == 1 ? Each[0] : BestOf(readings);
        Residuals = [.. readings.Select(reading => reading.Residual(LnFactor))];
        SumOfSquares = Residuals.Sum(residual => residual * residual);
        Margin = Margin.Of(SumOfSquares, readings.Count - 1, 1);
        Sensitivities = [.. readings.Select(reading => Slope(reading, LnFactor))];
        YieldMpa = nominalMpa * Math.Exp(LnFactor);
        var (low, high) = Within(readings, LnFactor, Margin.Half);
        Bounds = new(YieldMpa, low is { } from ? nominalMpa * Math.Exp(from) : null, nominalMpa * Math.Exp(high));
    }

    /// <summary>Yield stress of the grade [MPa].</summary>
    public double NominalMpa { get; }

    /// <summary>What was read.</summary>
    public IReadOnlyList<StripReading> Readings { get; }

    /// <summary>ln(yield factor).</summary>
    public double LnFactor { get; }

    /// <summary>The yield stress [MPa].</summary>
    public double YieldMpa { get; }

    /// <summary>The same with its interval.</summary>
    public Interval Bounds { get; }

    /// <summary>How much more than expected the strips opened, in reading errors, reading by reading.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Growth of what is expected with ln(yield), in reading errors, reading by reading.</summary>
    public IReadOnlyList<double> Sensitivities { get; }

    /// <summary>ln(yield factor) with which each reading alone agrees.</summary>
    public IReadOnlyList<double> Each { get; }

    /// <summary>Sum of the squared residuals.</summary>
    public double SumOfSquares { get; }

    /// <summary>How far a single reading may be from the expected one, in reading errors.</summary>
    public Margin Margin { get; }

    /// <summary>Fits readings.</summary>
    /// <param name="readings">What was read, at least one thing.</param>
    /// <param name="nominalMpa">Yield stress of the grade [MPa].</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static YieldFit Of(IReadOnlyList<StripReading> readings, double nominalMpa, CancellationToken cancellation) =>
        new(readings, nominalMpa, cancellation);

    /// <summary>ln(yield factor) with which some of the readings agree best.</summary>
    /// <param name="readings">The readings.</param>
    public double BestOf(IReadOnlyList<StripReading> readings)
    {
        _cancellation.ThrowIfCancellationRequested();
        if (readings is [var only])
            return Bisection.Solve(at => -only.Residual(at), _lowest, only.Pull.LnFlat);
        double[] each = [.. readings.Select(reading => BestOf([reading]))];
        return Bisection.Solve(Score, each.Min(), Math.Min(readings.Min(reading => reading.Pull.LnFlat), each.Max()));

        double Score(double lnFactor)
        {
            _cancellation.ThrowIfCancellationRequested();
            double score = 0;
            foreach (var reading in readings)
            {
                var slope = Slope(reading, lnFactor);
                if (!double.IsFinite(slope))
                    return double.PositiveInfinity;
                score -= reading.Residual(lnFactor) * slope;
            }

            return score;
        }
    }

    /// <summary>The yields with which some of the readings agree within so many reading errors, as ln(yield factor).</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="best">Where they agree best.</param>
    /// <param name="half">Reading errors, &gt; 0.</param>
    /// <returns>No low end where the strips spring back by less.</returns>
    public (double? Low, double High) Within(IReadOnlyList<StripReading> readings, double best, double half)
    {
        var least = Squares(best);
        var highest = readings.Min(reading => reading.Pull.LnFlat);
        return (
            Excess(_lowest) > 0 ? -Bisection.Solve(negative => Excess(-negative), -best, -_lowest) : null,
            Bisection.Solve(Excess, best, highest));

        double Excess(double lnFactor) => Squares(lnFactor) - least - (half * half);

        double Squares(double lnFactor)
        {
            _cancellation.ThrowIfCancellationRequested();
            double sum = 0;
            foreach (var reading in readings)
            {
                var residual = reading.Residual(lnFactor);
                sum += residual * residual;
            }

            return sum;
        }
    }

    // Taken from below, for just above lies the yield at which the strip stays elastic.
    private static double Slope(StripReading reading, double lnFactor) =>
        (reading.Residual(lnFactor - Step) - reading.Residual(lnFactor)) / Step;
}
