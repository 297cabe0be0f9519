using CsCheck;
using Forming.Layout;
using Forming.Tolerances;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Tolerances;

/// <summary>The closed form against simulation, its own limits and hand figures.</summary>
public class ErrorPropagationTests
{
    private static readonly FoldedPolygon Forty = Even(40, 4.5, 12);

    // Folds, angle [°], facet, bias [°], scatter [°], mark scatter.
    public static TheoryData<int, double, double, double, double, double> Cases { get; } = new()
    {
        { 1, 30, 20, 0.5, 2, 0.5 },
        { 6, 15, 25, 0, 1, 0 },
        { 9, 16, 18, 0.3, 0.5, 0.4 },
        { 12, 15, 13, -0.4, 0, 0.8 },
        { 40, 4.5, 12, -0.1, 0.5, 0.4 },
        { 20, 9, 30, 1, 5, 2 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    [Trait("Category", "Long")]
    public void Simulated_forms_scatter_as_the_closed_form_says(int folds, double degrees, double facet, double bias, double scatter, double marks)
    {
        var form = Even(folds, degrees, facet);
        var accuracy = new FoldAccuracy(Angle.FromDegrees(bias), Angle.FromDegrees(scatter), marks);
        var draws = Simulate(form, accuracy, 60_000, seed: 1723 + folds);
        var exact = ErrorPropagation.Exact(form, accuracy);
        var (mean, products) = Moments(draws);
        AssertMean(mean.X, exact.Bias.X, exact.Covariance.XxMm2);
        AssertMean(mean.Y, exact.Bias.Y, exact.Covariance.YyMm2);
        AssertMoment(products.Select(p => p.Xx), exact.Covariance.XxMm2);
        AssertMoment(products.Select(p => p.Yy), exact.Covariance.YyMm2);
        AssertMoment(products.Select(p => p.Xy), exact.Covariance.XyMm2);

        void AssertMean(double found, double expected, double variance) =>
            Assert.True(Math.Abs(found - expected) <= (4 * Math.Sqrt(variance / draws.Length)) + 1e-9, $"{found} against {expected}");

        void AssertMoment(IEnumerable<double> values, double expected)
        {
            var list = values.ToArray();
            var average = list.Average();
            var error = Math.Sqrt(list.Sum(value => (value - average) * (value - average)) / list.Length / list.Length);
            Assert.True(Math.Abs(average - expected) <= (4 * error) + (1e-4 * Math.Abs(expected)) + 1e-9, $"{average} ± {error} against {expected}");
        }
    }

    // The case that the definition of this page's figures names: first order is 9 % off in variance.
    [Fact]
    [Trait("Category", "Long")]
    public void Forty_folds_need_the_exact_form()
    {
        var accuracy = new FoldAccuracy(Angle.FromDegrees(-0.1), Angle.FromDegrees(0.5), 0);
        var (exact, first) = (ErrorPropagation.Exact(Forty, accuracy).Covariance, ErrorPropagation.FirstOrder(Forty, accuracy).Covariance);
        var (_, products) = Moments(Simulate(Forty, accuracy, 100_000, seed: 40));
        var (xx, yy) = (products.Average(p => p.Xx), products.Average(p => p.Yy));
        Near(xx, exact.XxMm2, 0.02);
        Near(yy, exact.YyMm2, 0.02);
        var worst = Math.Max(Math.Abs((first.XxMm2 / xx) - 1), Math.Abs((first.YyMm2 / yy) - 1));
        Assert.InRange(worst, 0.06, 0.12);
    }

    [Fact]
    public void Small_errors_make_first_order_exact() =>
        Gen.Select(Gen.Int[2, 15], Gen.Double[2, 20], Gen.Double[5, 40], Gen.Double[0, 1]).ForAll((folds, degrees, facet, share) =>
        {
            var form = Even(folds, degrees, facet);
            var tiny = new FoldAccuracy(new(1e-6 * share), new(1e-6), 1e-5);
            var (exact, first) = (ErrorPropagation.Exact(form, tiny), ErrorPropagation.FirstOrder(form, tiny));
            // What scatter alone draws the end in by is of second order.
            Within((1e-3 * first.Bias.Length) + (1e-12 * folds * form.FlatsMm.Sum()), 0, (exact.Bias - first.Bias).Length);
            Within(1e-4 * first.Covariance.LargestMm2, first.Covariance.XxMm2, exact.Covariance.XxMm2);
            Within(1e-4 * first.Covariance.LargestMm2, first.Covariance.YyMm2, exact.Covariance.YyMm2);
            Within(1e-4 * first.Covariance.LargestMm2, first.Covariance.XyMm2, exact.Covariance.XyMm2);
        }, iter: 200);

    // One fold of 90°, lead-out 100: g = J(0, 100) = (-100, 0). Scatter 1 mrad: 0.1 mm along x, none along y.
    // Its mark moves by h = (1, 0) - (0, 1): 0.5 mm of mark scatter is 0.5 mm along x and y, fully against each other.
    [Fact]
    public void One_fold_comes_out_as_by_hand()
    {
        var form = new FoldedPolygon([50, 100], [Math.PI / 2]);
        var folds = ErrorPropagation.FirstOrder(form, new(new(0.002), new(0.001), 0));
        Within(1e-12, -0.2, folds.Bias.X);
        Within(1e-12, 0, folds.Bias.Y);
        Within(1e-12, 0.01, folds.Covariance.XxMm2);
        Within(1e-12, 0, folds.Covariance.YyMm2);
        var marks = ErrorPropagation.Exact(form, new(Angle.Zero, Angle.Zero, 0.5)).Covariance;
        Within(1e-12, 0.25, marks.XxMm2);
        Within(1e-12, 0.25, marks.YyMm2);
        Within(1e-12, -0.25, marks.XyMm2);
        var ellipse = marks.Ellipse95();
        Within(1e-9, 2.447746830680816 * Math.Sqrt(0.5), ellipse.SemiMajorMm);
        Within(1e-6, 0, ellipse.SemiMinorMm);
        Within(1e-9, -45, ellipse.Direction.Degrees);
    }

    // Twelve bends of 15° at ±1°: worst ±12°, root sum of squares 1° √12 = ±3.46°.
    [Fact]
    public void Twelve_bends_at_one_degree_close_within_three_and_a_half()
    {
        var report = ToleranceReport.Of(Even(12, 15, 20), FoldAccuracy.Default, null);
        Within(1e-9, 12, report.ClosingWorst.Degrees);
        Within(1e-9, Math.Sqrt(12), report.ClosingReach.Degrees);
        Within(0.05, 3.5, report.ClosingReach.Degrees);
        Assert.Null(report.Needed);
        Assert.Empty(report.Checks);
    }

    [Fact]
    public void The_needed_scatter_meets_the_tolerance_and_a_little_more_does_not() =>
        Gen.Select(Gen.Int[2, 14], Gen.Double[3, 15], Gen.Double[10, 30], Gen.Double[-0.2, 0.2], Gen.Double[0, 0.3]).ForAll((folds, degrees, facet, bias, marks) =>
        {
            var form = Even(folds, degrees, facet);
            var wanted = new WantedTolerance(Angle.FromDegrees(4), 12);
            var accuracy = new FoldAccuracy(Angle.FromDegrees(bias), Angle.FromDegrees(3), marks);
            var needed = NeededScatter.For(new ParallelErrors(form), accuracy, wanted);
            var closing = ToleranceReport.Of(form, accuracy with { Scatter = needed.Closing }, wanted);
            Within(1e-9, 4, closing.ClosingReach.Degrees);
            var first = ErrorPropagation.FirstOrder(form, accuracy with { Scatter = needed.End });
            Assert.True(needed.EndExact.Radians > 0);
            Assert.InRange(ErrorPropagation.Exact(form, accuracy with { Scatter = needed.EndExact }).ReachMm(2), 12 - 1e-4, 12);
            // First order bounds bias and scatter each in its own direction, as its formula does, where marks and folds share none.
            Assert.InRange(first.ReachMm(2), 0, 12 + 1e-9);
        }, iter: 100);

    [Fact]
    public void Nothing_is_small_enough_where_the_bias_breaks_it()
    {
        var form = Even(12, 15, 20);
        var accuracy = new FoldAccuracy(Angle.FromDegrees(0.5), Angle.FromDegrees(0.1), 0);
        var report = ToleranceReport.Of(form, accuracy, new(Angle.FromDegrees(2), 2));
        Assert.Equal(0, report.Needed!.Closing.Radians);
        Assert.Equal(0, report.Needed.End.Radians);
        Assert.Equal(0, report.Needed.EndExact.Radians);
        Assert.Contains(report.Notes, note => note.Id == "bias-breaks-closing");
        Assert.Contains(report.Notes, note => note.Id == "bias-breaks-end");
        Assert.All(report.Checks, check => Assert.Equal(Forming.Checks.Verdict.Warn, check.Verdict));
        Assert.All(report.Checks, check => Assert.NotNull(check.Remedy));
    }

    // Half ends: 7.5°, then 15° each; facets of 20 mm on folds of 15° are a radius of 20/15° = 76.39 mm, whatever the ends are.
    [Fact]
    public void The_mean_radius_is_facet_over_fold_whatever_the_ends()
    {
        var half = new FoldedPolygon([60, 20, 20, 20, 20, 60], [.. new[] { 7.5, 15, 15, 15, 7.5 }.Select(a => a * Degree)]);
        var radius = 20 / (15 * Degree);
        Near(radius, half.MeanRadiusMm()!.Value, 1e-12);
        Near(radius, Even(6, 15, 20).MeanRadiusMm()!.Value, 1e-12);
        Near(radius, Even(3, 15, 20).MeanRadiusMm()!.Value, 1e-12);
        Assert.Null(Even(2, 15, 20).MeanRadiusMm());
        // A sweep of 60° that comes out as 63° is tighter by 60/63.
        Near(radius * 60 / 63, ToleranceReport.Of(half, FoldAccuracy.Default, null).RadiusWith(Angle.FromDegrees(3))!.Value, 1e-12);
    }

    internal static FoldedPolygon Even(int folds, double degrees, double facet) =>
        new([60, .. Enumerable.Repeat(facet, folds - 1), 60], [.. Enumerable.Repeat(degrees * Degree, folds)]);

    private static Point[] Simulate(FoldedPolygon form, FoldAccuracy accuracy, int count, int seed)
    {
        var random = new Random(seed);
        var n = form.Folds;
        var draws = new Point[count];
        var planned = form.Vertices()[^1];
        for (var d = 0; d < count; d++)
        {
            var (place, turn, before) = (Point.Origin, 0.0, 0.0);
            for (var j = 0; j <= n; j++)
            {
                var mark = j < n ? accuracy.MarkScatterMm * Normal(random) : 0;
                place += (form.FlatsMm[j] + mark - before) * Point.Along(turn);
                before = mark;
                if (j < n)
                    turn += form.FoldAngles[j] + accuracy.Bias.Radians + (accuracy.Scatter.Radians * Normal(random));
            }

            draws[d] = place - planned;
        }

        return draws;
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static (Point Mean, (double Xx, double Yy, double Xy)[] Products) Moments(Point[] draws)
    {
        var mean = 1.0 / draws.Length * draws.Aggregate((a, b) => a + b);
        return (mean, [.. draws.Select(draw => draw - mean).Select(off => (off.X * off.X, off.Y * off.Y, off.X * off.Y))]);
    }
}
