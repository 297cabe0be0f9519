using Forming.TestStrips;
using MathNet.Numerics;

namespace Forming.Tests.TestStrips;

/// <summary>The straight line against MathNet and its own definition.</summary>
public class StraightLineTests
{
    private static readonly double[] X = [1, 2, 3, 4, 5];

    // By hand: mean x 3, mean y 2.4, sum (x-3)² = 10, sum (x-3) y = 7, slope 0.7, intercept 0.3; residuals 0, 0.3, -0.4, -0.1, 0.2, squares 0.30.
    private static readonly double[] Y = [1, 2, 2, 3, 4];

    [Fact]
    public void Five_readings_come_out_as_by_hand()
    {
        var line = StraightLine.Fit(X, Y, 1e-9);
        Workshop.Within(1e-12, 0.7, line.Slope);
        Workshop.Within(1e-12, 0.3, line.Intercept);
        Workshop.Within(1e-12, 0.30, line.SumOfSquares);
        Workshop.Within(1e-12, Math.Sqrt(0.1), line.Margin.Scatter!.Value);
        // Leverages 1/5 + (x-3)²/10, which add up to two fitted figures; t(3) = 3.182446.
        double[] leverages = [0.6, 0.3, 0.2, 0.3, 0.6];
        Assert.All(leverages.Zip(line.Leverages), pair => Workshop.Within(1e-12, pair.First, pair.Second));
        Workshop.Within(1e-6, 3.182446 * Math.Sqrt(0.1 * 0.6), line.Band(1).High!.Value - line.At(1));
        Workshop.Within(1e-6, 3.182446 * Math.Sqrt(0.1 * 1.6), line.NextReading(1).High!.Value - line.At(1));
    }

    [Fact]
    public void It_is_the_line_of_MathNet()
    {
        var random = new Random(11);
        for (var i = 0; i < 100; i++)
        {
            double[] x = [.. Enumerable.Range(0, 7).Select(_ => random.NextDouble() * 90)];
            double[] y = [.. x.Select(at => 2 + (0.9 * at) + random.NextDouble())];
            var line = StraightLine.Fit(x, y, 1e-9);
            double[] coefficients = MathNet.Numerics.Fit.Polynomial(x, y, 1);
            Workshop.Near(coefficients[1], line.Slope, 1e-10);
            Workshop.Within(1e-9, coefficients[0], line.Intercept);
            Workshop.Near(GoodnessOfFit.StandardError([.. x.Select(line.At)], y, 2), line.Margin.Scatter!.Value, 1e-9);
        }
    }

    // Fieller: at either end of the setting's interval the line's band just reaches the wanted reading.
    [Theory]
    [InlineData(0)]
    [InlineData(2.4)]
    [InlineData(9)]
    public void The_band_just_reaches_the_reading_at_the_ends_of_the_setting(double reading)
    {
        var line = StraightLine.Fit(X, Y, 1e-9);
        var setting = line.SettingFor(reading);
        Workshop.Within(1e-12, reading, line.At(setting.Value));
        Workshop.Within(1e-9, reading, line.Band(setting.Low!.Value).High!.Value);
        Workshop.Within(1e-9, reading, line.Band(setting.High!.Value).Low!.Value);
    }

    [Fact]
    public void A_slope_that_may_be_zero_leaves_the_setting_open()
    {
        var line = StraightLine.Fit([1, 2, 3], [1, 3, 1.2], 1e-9);
        Assert.False(line.IsSlopeKnown);
        var setting = line.SettingFor(2);
        Assert.Null(setting.Low);
        Assert.Null(setting.High);
    }

    [Fact]
    public void Readings_that_agree_by_luck_are_no_closer_than_they_can_be_read()
    {
        var line = StraightLine.Fit(X, [1, 2, 3, 4, 5], 0.25);
        Assert.True(line.Margin.IsReadingError);
        Assert.Equal(0.25, line.Margin.Half);
        Workshop.Within(1e-12, 0.25 * Math.Sqrt(0.2), line.Band(3).High!.Value - 3);
    }
}
