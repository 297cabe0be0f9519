using Forming.Learning;
using MathNet.Numerics.LinearRegression;

namespace Forming.TestStrips;

/// <summary>A straight line through readings, by least squares, with its confidence band.</summary>
/// <remarks>
/// Ordinary least squares of the reading y on the setting x, which is known; readings scatter alike along the line. Bands by
/// Student's t (<see cref="Margin"/>); a setting for a wanted reading by Fieller's theorem, which is exact where the textbook's ± is not.
/// </remarks>
public sealed class StraightLine
{
    private readonly double _spread; // sum of (x - mean x)²
    private readonly double _slopeHalf;

    private StraightLine(
        IReadOnlyList<double> x,
        IReadOnlyList<double> y,
        double meanX,
        double meanY,
        double slope,
        double? assumedHalf,
        double readingError)
    {
        Count = x.Count;
        MeanX = meanX;
        MeanY = meanY;
        Slope = slope;
        IsSlopeAssumed = assumedHalf is not null;
        Expected = [.. x.Select(At)];
        Residuals = [.. Expected.Zip(y, (line, reading) => reading - line)];
        SumOfSquares = Residuals.Sum(residual => residual * residual);
        Margin = Margin.Of(SumOfSquares, Count - (IsSlopeAssumed ? 1 : 2), readingError);
        _spread = x.Sum(at => (at - meanX) * (at - meanX));
        _slopeHalf = assumedHalf ?? Margin.Half / Math.Sqrt(_spread);
        Leverages = [.. x.Select(Leverage)];
    }

    /// <summary>Number of readings.</summary>
    public int Count { get; }

    /// <summary>Mean setting.</summary>
    public double MeanX { get; }

    /// <summary>Mean reading.</summary>
    public double MeanY { get; }

    /// <summary>Growth of the reading with the setting.</summary>
    public double Slope { get; }

    /// <summary>Whether the slope was assumed and not fitted.</summary>
    public bool IsSlopeAssumed { get; }

    /// <summary>Reading at a setting of zero.</summary>
    public double Intercept => MeanY - (Slope * MeanX);

    /// <summary>The line at each setting.</summary>
    public IReadOnlyList<double> Expected { get; }

    /// <summary>Reading less line, reading by reading.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>How far each reading pulls the line to itself, 0 to 1.</summary>
    public IReadOnlyList<double> Leverages { get; }

    /// <summary>Sum of the squared residuals.</summary>
    public double SumOfSquares { get; }

    /// <summary>How far a single reading may lie from the line.</summary>
    public Margin Margin { get; }

    /// <summary>Whether the confidence interval of the slope leaves zero out, so that the line can be read backwards.</summary>
    public bool IsSlopeKnown => Math.Abs(Slope) > _slopeHalf;

    /// <summary>The slope with its interval.</summary>
    public Interval SlopeInterval => Interval.Around(Slope, _slopeHalf);

    /// <summary>A line whose slope is fitted.</summary>
    /// <param name="x">[n] settings, at least two of them different.</param>
    /// <param name="y">[n] readings.</param>
    /// <param name="readingError">Half-width within which 95 % of readings lie, in the unit of the reading.</param>
    public static StraightLine Fit(IReadOnlyList<double> x, IReadOnlyList<double> y, double readingError)
    {
        var (intercept, slope) = SimpleRegression.Fit([.. x], [.. y]);
        var meanX = x.Average();
        return new(x, y, meanX, intercept + (slope * meanX), slope, null, readingError);
    }

    /// <summary>A line of an assumed slope through the mean of the readings.</summary>
    /// <param name="x">[n] settings, alike or not.</param>
    /// <param name="y">[n] readings.</param>
    /// <param name="slope">The assumed slope.</param>
    /// <param name="slopeError">How far it may be out, at 95 %.</param>
    /// <param name="readingError">Half-width within which 95 % of readings lie, in the unit of the reading.</param>
    public static StraightLine WithSlope(
        IReadOnlyList<double> x, IReadOnlyList<double> y, double slope, double slopeError, double readingError) =>
        new(x, y, x.Average(), y.Average(), slope, slopeError, readingError);

    /// <summary>The line at a setting.</summary>
    /// <param name="x">The setting.</param>
    public double At(double x) => MeanY + (Slope * (x - MeanX));

    /// <summary>Share of a reading's variance that the line has at a setting; with an assumed slope that of the mean.</summary>
    /// <param name="x">The setting.</param>
    public double Leverage(double x) => (1.0 / Count) + (IsSlopeAssumed ? 0 : (x - MeanX) * (x - MeanX) / _spread);

    /// <summary>The line's own band at a setting.</summary>
    /// <param name="x">The setting.</param>
    public Interval Band(double x) => Interval.Around(At(x), Math.Sqrt(Square(MeanHalf) + Square(_slopeHalf * (x - MeanX))));

    /// <summary>Where the next reading at a setting may lie.</summary>
    /// <param name="x">The setting.</param>
    public Interval NextReading(double x) =>
        Interval.Around(At(x), Math.Sqrt(Square(Margin.Half) + Square(MeanHalf) + Square(_slopeHalf * (x - MeanX))));

    /// <summary>The setting at which the line meets a wanted reading, by Fieller's theorem.</summary>
    /// <param name="y">The reading.</param>
    /// <returns>The setting; without ends where the slope is not known.</returns>
    public Interval SettingFor(double y)
    {
        // All d = x - mean for which (Slope d - c)² <= MeanHalf² + slopeHalf² d².
        var c = y - MeanY;
        var best = MeanX + (c / Slope);
        var a = Square(Slope) - Square(_slopeHalf);
        if (!IsSlopeKnown)
            return new(best, null, null);
        var root = Math.Sqrt(Square(_slopeHalf * c) + (a * Square(MeanHalf)));
        return new(best, MeanX + (((Slope * c) - root) / a), MeanX + (((Slope * c) + root) / a));
    }

    private double MeanHalf => Margin.Half / Math.Sqrt(Count);

    private static double Square(double value) => value * value;
}
