using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Forming.Learning;

/// <summary>
/// The yield factor of a sheet by what was known of its grade and what was read on it: Bayes on a grid of ln(yield factor) and ln(n).
/// </summary>
/// <remarks>
/// The grid is laid over everything plausible and then narrowed about what it finds, so that a sharp reading is resolved as well as none.
/// Errors that readings share are summed out in closed form. The whole flow curve scales by one factor, eps0 and n kept.
/// </remarks>
public sealed class YieldPosterior
{
    /// <summary>Half-width of a 95 % interval, in standard deviations.</summary>
    public static readonly double TwoSided = Normal.InvCDF(0, 1, 0.975);

    /// <summary>Confidence of every interval.</summary>
    public const double Confidence = 0.95;

    // A factor of 20 to either side is beyond every sheet.
    private const double Reach = 3;

    private const int Points = 81;

    private const int HardeningPoints = 9;

    private const double HardeningReach = 3;

    private const double WindowDeviations = 6;

    private const double StepsPerDeviation = 5;

    private const int MostRounds = 10;

    private readonly YieldQuestion _question;
    private readonly Func<double[], double> _misfit;
    private readonly CancellationToken _cancellation;

    private YieldPosterior(YieldQuestion question, CancellationToken cancellation)
    {
        _question = question;
        _cancellation = cancellation;
        _misfit = MisfitOf(question);
        var posterior = Narrowed(LogDensities, question.HardeningDeviation > 0 ? HardeningNodes() : [0]);
        (LnFactor, Deviation) = (posterior.Mean, posterior.Deviation);
        (LnLow, LnHigh) = (posterior.At((1 - Confidence) / 2), posterior.At((1 + Confidence) / 2));
        (LnHardening, HardeningDeviation) = (posterior.OtherMean, posterior.OtherDeviation);
        var count = question.Readings.Count;
        Residuals = [.. question.Readings.Select((reading, i) => ResidualOf(i, LnFactor, LnHardening) / ErrorOf(i))];
        if (count == 0)
            return;
        Alone = ByLikelihood(at => -_misfit(ResidualsAt(at, 0)) / 2);
        Misfit = _misfit(ResidualsAt(Alone.Value.LnFactor, 0));
    }

    /// <summary>Mean of ln(yield factor).</summary>
    public double LnFactor { get; }

    /// <summary>Standard deviation of ln(yield factor).</summary>
    public double Deviation { get; }

    /// <summary>Lower end of ln(yield factor) at <see cref="Confidence"/>.</summary>
    public double LnLow { get; }

    /// <summary>Upper end of ln(yield factor) at <see cref="Confidence"/>.</summary>
    public double LnHigh { get; }

    /// <summary>The yield factor with its interval.</summary>
    public Interval Factor => new(Math.Exp(LnFactor), Math.Exp(LnLow), Math.Exp(LnHigh));

    /// <summary>Mean of ln(n/nominal n).</summary>
    public double LnHardening { get; }

    /// <summary>Standard deviation of ln(n/nominal n).</summary>
    public double HardeningDeviation { get; }

    /// <summary>Whether the readings told something of n apart from the yield: its deviation fell by a fifth or more.</summary>
    public bool TellsHardening => _question.HardeningDeviation > 0 && HardeningDeviation < 0.8 * _question.HardeningDeviation;

    /// <summary>Weight of what was known before against the readings, 0 to 1; 1 without readings.</summary>
    public double PriorWeight => Math.Min(1, Square(Deviation / _question.PriorDeviation));

    /// <summary>Observed less predicted at the mean, in standard deviations of the reading.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>What all readings say without the prior, at the nominal n; null where there is no reading.</summary>
    public LikelyYield? Alone { get; }

    /// <summary>What each reading says by itself, at the nominal n.</summary>
    public IReadOnlyList<LikelyYield> Each() =>
        [.. Enumerable.Range(0, _question.Readings.Count).Select(i => ByLikelihood(at => -Square(ResidualOf(i, at, 0) / ErrorOf(i)) / 2))];

    /// <summary>Squared misfit of the readings at <see cref="Alone"/>, about one for each reading that is left over.</summary>
    public double Misfit { get; }

    /// <summary>How many times their stated errors the readings were taken to be out by, at least 1.</summary>
    public double Widening { get; private init; } = 1;

    /// <summary>Joins what was known and what was read.</summary>
    /// <param name="question">Prior and readings.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static YieldPosterior Of(YieldQuestion question, CancellationToken cancellation = default) => new(question, cancellation);

    /// <summary>
    /// The same, but where the readings scatter further than their errors explain, 1 time of 20, their errors grow to that scatter, times
    /// Student's t over what it is for many.
    /// </summary>
    /// <param name="question">Prior and readings.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static YieldPosterior OfScattered(YieldQuestion question, CancellationToken cancellation = default)
    {
        var stated = Of(question, cancellation);
        var spare = question.Readings.Count - 1;
        if (spare < 1 || stated.Misfit <= ChiSquared.InvCDF(spare, Confidence))
            return stated;
        var times = Math.Sqrt(stated.Misfit / spare) * StudentT.InvCDF(0, 1, spare, (1 + Confidence) / 2) / TwoSided;
        var wider = question with
        {
            Readings = [.. question.Readings.Select(reading => reading with { Deviation = times * reading.Deviation })],
        };
        return new(wider, cancellation) { Widening = times };
    }

    /// <summary>What a value that grows with the yield is at the mean and at both ends of the interval.</summary>
    /// <param name="ofLnFactor">The value by ln(yield factor).</param>
    public Interval Of(Func<double, double> ofLnFactor)
    {
        double low = ofLnFactor(LnLow), high = ofLnFactor(LnHigh);
        return new(ofLnFactor(LnFactor), Math.Min(low, high), Math.Max(low, high));
    }

    // Squared misfit of residuals whose covariance is diag(d²) + A Aᵀ: r'D⁻¹r - v'(1 + A'D⁻¹A)⁻¹v with v = A'D⁻¹r (Woodbury).
    private static Func<double[], double> MisfitOf(YieldQuestion question)
    {
        double[] weights = [.. question.Readings.Select(reading => 1 / Square(reading.Deviation))];
        var shared = question.SharedErrors;
        if (shared.Count == 0)
            return residuals => Own(residuals);
        var inner = Matrix<double>.Build.Dense(shared.Count, shared.Count, (a, b) =>
            (a == b ? 1 : 0) + Enumerable.Range(0, weights.Length).Sum(i => weights[i] * shared[a][i] * shared[b][i])).Inverse();
        return residuals =>
        {
            var own = Own(residuals);
            if (!double.IsFinite(own))
                return own;
            var common = Vector<double>.Build.Dense(
                shared.Count, a => Enumerable.Range(0, weights.Length).Sum(i => weights[i] * shared[a][i] * residuals[i]));
            return own - (common * (inner * common));
        };

        double Own(double[] residuals)
        {
            double sum = 0;
            for (var i = 0; i < residuals.Length; i++)
                sum += weights[i] * Square(residuals[i]);
            return double.IsNaN(sum) ? double.PositiveInfinity : sum;
        }
    }

    private static double Square(double value) => value * value;

    private double[] HardeningNodes() =>
    [
        .. Enumerable.Range(0, HardeningPoints).Select(i =>
            _question.HardeningDeviation * HardeningReach * ((2.0 * i / (HardeningPoints - 1)) - 1)),
    ];

    private double ErrorOf(int reading) => Math.Sqrt(
        Square(_question.Readings[reading].Deviation) + _question.SharedErrors.Sum(error => Square(error[reading])));

    private double ResidualOf(int reading, double lnFactor, double lnHardening)
    {
        var (observed, _, predicted) = _question.Readings[reading];
        return observed - predicted(lnFactor - _question.HardeningTrade.At(lnHardening), lnHardening);
    }

    private double[] ResidualsAt(double lnFactor, double lnHardening)
    {
        var residuals = new double[_question.Readings.Count];
        for (var i = 0; i < residuals.Length; i++)
            residuals[i] = ResidualOf(i, lnFactor, lnHardening);
        return residuals;
    }

    // A few percent of n move every reading smoothly: a parabola through three places stands for all of them.
    private double[] LogDensities(double lnFactor, double[] hardenings)
    {
        var middle = ResidualsAt(lnFactor, 0);
        if (hardenings.Length == 1)
            return [LogDensity(lnFactor, 0, middle)];
        var reach = HardeningReach / 2 * _question.HardeningDeviation;
        double[] less = ResidualsAt(lnFactor, -reach), more = ResidualsAt(lnFactor, reach);
        return [.. hardenings.Select(at => LogDensity(lnFactor, at, Through(at / reach)))];

        double[] Through(double at) => [.. middle.Select((value, i) => Between(less[i], value, more[i], at))];

        static double Between(double less, double middle, double more, double at) =>
            middle + (at / 2 * (more - less + (at * (more + less - (2 * middle)))));
    }

    private double LogDensity(double lnFactor, double lnHardening, double[] residuals)
    {
        var own = lnFactor - _question.HardeningTrade.At(lnHardening);
        var prior = Square(own / _question.PriorDeviation)
            + (_question.HardeningDeviation > 0 ? Square(lnHardening / _question.HardeningDeviation) : 0);
        return -(prior + _misfit(residuals)) / 2;
    }

    private Marginal Narrowed(Func<double, double[], double[]> logDensities, double[] others)
    {
        double middle = 0, half = Reach;
        for (var round = 0; ; round++)
        {
            _cancellation.ThrowIfCancellationRequested();
            var found = Marginal.Of(middle, half, Points, others, logDensities);
            var step = 2 * half / (Points - 1);
            if (found.Deviation >= StepsPerDeviation * step || round == MostRounds)
                return found;
            (middle, half) = (found.Mean, Math.Max(WindowDeviations * found.Deviation, 2 * step));
        }
    }

    // The likeliest, and where the squared misfit has grown by that of a 95 % interval: it does not lean on a tangent.
    private LikelyYield ByLikelihood(Func<double, double> logLikelihood)
    {
        var best = Narrowed((at, _) => [logLikelihood(at)], [0]).Peak;
        var top = logLikelihood(best);
        var drop = Square(TwoSided) / 2;
        return new(best, EndAt(-Reach), EndAt(Reach));

        double? EndAt(double end) => top - logLikelihood(end) > drop
            ? best + (Math.Sign(end) * Bisection.Solve(
                way => top - logLikelihood(best + (Math.Sign(end) * way)) - drop, 0, Math.Abs(end - best)))
            : null;
    }
}

/// <summary>What readings say without a prior.</summary>
/// <param name="LnFactor">The likeliest ln(yield factor).</param>
/// <param name="LnLow">Lower end at 95 %, or null where there is none.</param>
/// <param name="LnHigh">Upper end at 95 %, or null where there is none.</param>
public readonly record struct LikelyYield(double LnFactor, double? LnLow, double? LnHigh)
{
    /// <summary>The yield factor with its interval.</summary>
    public Interval Factor => new(
        Math.Exp(LnFactor), LnLow is { } low ? Math.Exp(low) : null, LnHigh is { } high ? Math.Exp(high) : null);
}
