using CsCheck;
using Forming.Results;
using Forming.TestStrips;

namespace Forming.Tests.TestStrips;

/// <summary>The stop's line from strips: recovery, coverage, one strip, outliers.</summary>
public class StopStripsTests
{
    private const double Offset = 1.4;
    private const double Slope = 1.06;
    private const double Target = 12;

    // The brake that is to be learnt: stop = Offset + Slope × fold angle.
    private static double FoldAt(double stop) => (stop - Offset) / Slope;

    private static StopStrip Strip(double stop, double fold) => new(Angle.FromDegrees(stop), Angle.FromDegrees(fold));

    private static StopLesson Learn(IEnumerable<(double Stop, double Fold)> strips, double readingError = 0.5, double? target = Target) =>
        StopStrips.Learn(new()
        {
            Strips = [.. strips.Select(strip => Strip(strip.Stop, strip.Fold))],
            ReadingError = Angle.FromDegrees(readingError),
            Targets = target is { } wanted ? [Angle.FromDegrees(wanted)] : [],
        });

    private static StopLesson Noisy(Random random, double deviation, double readingError, params double[] stops) =>
        Learn(stops.Select(stop => (stop, FoldAt(stop) + Draws.Normal(random, deviation))), readingError);

    [Fact]
    public void Strips_without_error_give_the_line_back()
    {
        var lesson = Learn([(6, FoldAt(6)), (15, FoldAt(15)), (24, FoldAt(24))]);
        Workshop.Within(1e-9, Offset, lesson.Line.Offset.Degrees);
        Workshop.Within(1e-12, Slope, lesson.Line.Slope);
        Workshop.Within(1e-9, Offset + (Slope * Target), lesson.Settings[0].Set.Degrees);
        Assert.Empty(lesson.Outliers);
    }

    [Theory]
    [InlineData(3, 1)]
    [InlineData(4, 2)]
    [InlineData(6, 3)]
    [InlineData(12, 4)]
    public void Nineteen_of_twenty_intervals_hold_the_truth(int strips, int seed)
    {
        double[] stops = [.. Enumerable.Range(0, strips).Select(i => 6 + (18.0 * i / (strips - 1)))];
        var truth = Offset + (Slope * Target);
        var held = (Slope: 0, Offset: 0, Setting: 0, Next: 0);
        Draws.Share(seed, random =>
        {
            var lesson = Noisy(random, 0.3, 0.01, stops);
            held.Slope += lesson.Slope.Holds(Slope) ? 1 : 0;
            held.Offset += lesson.Offset.Holds(Offset * Workshop.Degree) ? 1 : 0;
            var advice = lesson.Settings[0];
            held.Setting += advice.StopAngle.Holds(truth * Workshop.Degree) ? 1 : 0;
            held.Next += advice.Expected.Holds((FoldAt(advice.Set.Degrees) + Draws.Normal(random, 0.3)) * Workshop.Degree) ? 1 : 0;
            return true;
        });
        Draws.AssertNominal(held.Slope / (double)Draws.Count);
        Draws.AssertNominal(held.Offset / (double)Draws.Count);
        Draws.AssertNominal(held.Setting / (double)Draws.Count);
        Draws.AssertNominal(held.Next / (double)Draws.Count);
    }

    [Fact]
    public void Two_strips_and_a_true_reading_error_hold_as_often() =>
        Draws.AssertNominal(Draws.Share(5, random =>
            Noisy(random, 0.5 / Draws.Half, 0.5, 8, 22).Settings[0].StopAngle.Holds((Offset + (Slope * Target)) * Workshop.Degree)));

    // At the strip's own angle the assumed slope plays no part; elsewhere the slope is drawn from what is assumed of it.
    [Fact]
    public void One_strip_holds_as_often_at_its_own_angle_and_away_from_it()
    {
        Draws.AssertNominal(Draws.Share(6, random =>
        {
            var slope = 1 + Draws.Normal(random, 0.05 / Draws.Half);
            var stop = Offset + (slope * 20);
            var lesson = StopStrips.Learn(new()
            {
                Strips = [Strip(stop, 20 + Draws.Normal(random, 0.5 / Draws.Half))],
                SlopeError = 0.05,
                Targets = [Angle.FromDegrees(5)],
            });
            return lesson.Settings[0].StopAngle.Holds((Offset + (slope * 5)) * Workshop.Degree);
        }));
    }

    // The floor makes a band honest where readings agree by luck; it never makes it narrower.
    [Fact]
    public void With_scatter_no_larger_than_the_reading_error_bands_hold_more_often() =>
        Assert.InRange(
            Draws.Share(7, random => Noisy(random, 0.5 / Draws.Half, 0.5, 6, 12, 18, 24).Slope.Holds(Slope)), 0.95, 1);

    [Fact]
    public void One_strip_says_that_its_slope_is_assumed()
    {
        var lesson = Learn([(20, 18)], target: 18);
        Assert.True(lesson.Fit.IsSlopeAssumed);
        Assert.Equal(1, lesson.Line.Slope);
        Workshop.Within(1e-9, 2, lesson.Line.Offset.Degrees);
        Workshop.Within(0.003, 0.5, (lesson.Settings[0].StopAngle.High!.Value - lesson.Settings[0].StopAngle.Value) / Workshop.Degree);
        Assert.Contains(lesson.Notes, note => note.Id == "slope-assumed");
        Assert.NotEqual(18, lesson.Next.FoldAngle!.Value.Degrees, 0.1);
    }

    [Fact]
    public void Strips_at_one_stop_show_scatter_but_no_slope()
    {
        var lesson = Learn([(20, 18), (20, 18.6), (20, 17.6)], readingError: 0.01, target: null);
        Assert.True(lesson.Fit.IsSlopeAssumed);
        Assert.Equal(2, lesson.Fit.Margin.DegreesOfFreedom);
        Assert.False(lesson.Fit.Margin.IsReadingError);
    }

    [Fact]
    public void A_misread_strip_is_named_and_still_counted()
    {
        double[] stops = [6, 9, 12, 15, 18, 21, 24];
        var lesson = Learn(stops.Select((stop, i) => (stop, FoldAt(stop) + (0.1 * Math.Sin(5 * i)) + (i == 4 ? 3.0 : 0))), 0.25);
        Assert.Equal(4, Assert.Single(lesson.Outliers).Index);
        Assert.Equal(7, lesson.Fit.Count);
        Assert.NotEqual(Offset, lesson.Line.Offset.Degrees, 0.05);
    }

    [Fact]
    public void Good_strips_are_seldom_named() =>
        Assert.InRange(Draws.Share(8, random => Noisy(random, 0.3, 0.01, 6, 10, 14, 18, 22, 26).Outliers.Count > 0), 0.01, 0.08);

    [Fact]
    public void The_next_strip_stands_where_the_band_shrinks_most()
    {
        double[] stops = [6, 7, 8, 20];
        var before = Learn(stops.Select(stop => (stop, FoldAt(stop))), 0.5, 25);
        var next = before.Next.StopAngle!.Value.Degrees;
        double HalfWith(double stop)
        {
            var setting = Learn(stops.Append(stop).Select(at => (at, FoldAt(at))), 0.5, 25).Settings[0].StopAngle;
            return setting.High!.Value - setting.Low!.Value;
        }

        Assert.All(new[] { 6.0, 10, 14, 20 }, stop => Assert.True(HalfWith(next) < HalfWith(stop)));
    }

    // A target amid the strips is often told best by a strip near it, not by one at the end.
    [Fact]
    public void Only_where_no_strip_between_tells_more_is_that_said() =>
        Gen.Select(Gen.Double[6, 30].Array[3, 6], Gen.Double[8, 28]).ForAll((stops, target) =>
        {
            if (stops.Max() - stops.Min() < 4)
                return;
            var next = Learn(stops.Select(stop => (stop, FoldAt(stop))), 0.1, target).Next;
            var end = HalfWith(next.StopAngle!.Value.Degrees);
            var between = Enumerable.Range(1, 9).Min(i => HalfWith(stops.Min() + ((stops.Max() - stops.Min()) * i / 10)));
            Assert.True(end <= between * 1.01, $"{end} against {between}");
            Assert.Equal(IsEnd(next.StopAngle.Value.Degrees), next.Text.Format.Contains("more than a strip in between", StringComparison.Ordinal));

            double HalfWith(double stop)
            {
                var setting = Learn(stops.Append(stop).Select(at => (at, FoldAt(at))), 0.1, target).Settings[0].StopAngle;
                return setting.High!.Value - setting.Low!.Value;
            }

            bool IsEnd(double stop) => stop < Math.Min(stops.Min(), Offset + (Slope * target)) + 1e-9 || stop > Math.Max(stops.Max(), Offset + (Slope * target)) - 1e-9;
        });

    [Theory]
    [InlineData(10, 22)]
    [InlineData(90, 45.5)]
    public void Where_scatter_hides_the_slope_no_interval_is_given_and_the_next_strip_stands_far_off(double stop, double next)
    {
        var lesson = Learn([(stop, stop - 1), (stop + 1, stop + 1), (stop + 2, stop + 1)], 0.1, stop);
        Assert.Null(lesson.Settings[0].StopAngle.Low);
        Assert.Null(lesson.Slope.High);
        Assert.Contains(lesson.Notes, note => note.Id == "slope-not-known");
        Workshop.Within(1e-9, next, lesson.Next.StopAngle!.Value.Degrees);
    }

    [Fact]
    public void The_stop_is_set_on_its_own_steps()
    {
        var lesson = StopStrips.Learn(new()
        {
            Strips = [Strip(6, FoldAt(6)), Strip(24, FoldAt(24))],
            Targets = [Angle.FromDegrees(Target)],
            Resolution = Angle.FromDegrees(0.5),
        });
        Workshop.Within(1e-9, 14, lesson.Settings[0].Set.Degrees); // 1.4 + 1.06 × 12 = 14.12
        Workshop.Within(1e-9, FoldAt(14), lesson.Settings[0].Expected.Value / Workshop.Degree);
    }

    [Theory]
    [InlineData(10, 20, 20, 10)] // the fold opens as the stop closes
    [InlineData(10, 5, 20, 5)] // the fold does not follow the stop
    [InlineData(10, 80, 20, 90)] // the line passes far from zero
    public void A_line_that_no_stop_has_is_refused(double stopA, double foldA, double stopB, double foldB) =>
        Assert.Equal("strips.no-stop-line", Assert.Throws<NoSolutionException>(() => Learn([(stopA, foldA), (stopB, foldB)])).Code);
}
