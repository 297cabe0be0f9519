using CsCheck;
using Forming.Layout;
using Forming.Tests.Layout;
using Forming.Tests.Tapers;
using Forming.Tolerances;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Tolerances;

/// <summary>Errors of folds and marks where folds are not parallel: against parallel folds, and against simulation.</summary>
public class HingedErrorsTests
{
    private static readonly Gen<FoldAccuracy> AnyAccuracy =
        from bias in Gen.Double[-0.3, 0.3]
        from scatter in Gen.Double[0.05, 1]
        from marks in Gen.Double[0.05, 0.8]
        select new FoldAccuracy(Angle.FromDegrees(bias), Angle.FromDegrees(scatter), marks);

    [Fact]
    public void With_equal_ends_errors_add_up_as_on_the_straight_form() =>
        Gen.Select(HingedFormTests.Equal, AnyAccuracy).ForAll((pair, given) =>
        {
            // Marks at both ends turn a line as well, which parallel folds leave out: beyond first order only folds are compared.
            var accuracy = given with { MarkScatterMm = 0 };
            var wanted = new WantedTolerance(Angle.FromDegrees(8), 40);
            var (straight, tapered) = (ToleranceReport.Of(pair.Straight, accuracy, wanted), ToleranceReport.Of(pair.Hinged, accuracy, wanted));
            foreach (var end in tapered.Ends)
            {
                Same(straight.Ends[0].Exact, end.Exact);
                Within(1e-9, straight.EndReachMm, end.Exact.ReachMm(2));
                Within(1e-9, 0, end.Exact.BiasZMm);
            }

            Within(1e-9, straight.ClosingBias.Radians, tapered.ClosingBias.Radians);
            Within(1e-9, straight.ClosingScatter.Radians, tapered.ClosingScatter.Radians);
            Within(1e-9, straight.ClosingWorst.Radians, tapered.ClosingWorst.Radians);
            Within(1e-9, straight.Needed!.Closing.Radians, tapered.Needed!.Closing.Radians);
            Within(1e-9, straight.Needed.End.Radians, tapered.Needed.End.Radians);
            Within(1e-9, straight.Needed.EndExact.Radians, tapered.Needed.EndExact.Radians);
            Assert.Equal(straight.RadiusMm is null, tapered.RadiusMm is null);
            Within(1e-9, straight.RadiusMm ?? 0, tapered.RadiusMm ?? 0);
            Within(1e-9, 0, tapered.Twist!.Scatter.Radians);
            Assert.Null(straight.Twist);

            (straight, tapered) = (ToleranceReport.Of(pair.Straight, given, wanted), ToleranceReport.Of(pair.Hinged, given, wanted));
            foreach (var end in tapered.Ends)
                Same(straight.Ends[0].FirstOrder, end.FirstOrder);
            Within(1e-9, straight.ClosingScatter.Radians, tapered.ClosingScatter.Radians);
        }, iter: 30);

    [Fact]
    public void Small_errors_are_those_of_first_order() => TaperJobs.AnyTaper.ForAll(
        taper =>
        {
            if (TaperJobs.TryPlan(taper) is not { } plan)
                return;
            var report = ToleranceReport.Of(
                plan.Taper!.Solid.Hinged(plan.Form.Stations), new(Angle.FromDegrees(1e-3), Angle.FromDegrees(1e-3), 1e-3), null);
            foreach (var end in report.Ends)
            {
                Within(1e-3 * end.FirstOrder.BiasMm, 0, (end.Exact.Bias - end.FirstOrder.Bias).Length);
                var (exact, first) = (end.Exact.Covariance, end.FirstOrder.Covariance);
                foreach (var (a, b) in new[] { (exact.XxMm2, first.XxMm2), (exact.YyMm2, first.YyMm2), (exact.ZzMm2, first.ZzMm2), (exact.XyMm2, first.XyMm2), (exact.XzMm2, first.XzMm2), (exact.YzMm2, first.YzMm2) })
                    Within(1e-3 * first.LargestMm2, b, a);
                Near(first.LargestMm2, exact.LargestMm2, 1e-3);
            }
        },
        iter: 8);

    // Mean within four standard errors of 5,000 draws, second moments within four of theirs.
    [Theory]
    [InlineData(70, 110, 520, 80)]
    [InlineData(150, 60, 300, 110)]
    public void The_exact_spread_is_what_simulation_finds(double near, double far, double length, double sweep)
    {
        var plan = TaperJobs.Plan(TaperJobs.Cone(near, far, length, sweep));
        var form = plan.Taper!.Solid.Hinged(plan.Form.Stations);
        var accuracy = new FoldAccuracy(Angle.FromDegrees(-0.2), Angle.FromDegrees(0.7), 0.6);
        var report = ToleranceReport.Of(form, accuracy, null);
        const int count = 5_000;
        var random = new Random(11);
        var planned = form.Folded();
        var line = planned.Motions[form.Folds - 1].Turned(form.AxisOf(form.Folds - 1));
        var across = planned.Motions[^1].Turned(form.AcrossOf(form.Folds - 1));
        double[][] draws = [.. Enumerable.Range(0, 8).Select(_ => new double[count])];
        for (var d = 0; d < count; d++)
        {
            Point[] nearLine = [.. form.Near], farLine = [.. form.Far];
            var angles = form.FoldAngles.ToArray();
            for (var i = 0; i < form.Folds; i++)
            {
                var onwards = new Point(form.AcrossOf(i).X, form.AcrossOf(i).Z);
                nearLine[i + 1] += accuracy.MarkScatterMm * Normal(random) * onwards;
                farLine[i + 1] += accuracy.MarkScatterMm * Normal(random) * onwards;
                angles[i] += accuracy.Bias.Radians + (accuracy.Scatter.Radians * Normal(random));
            }

            var made = new HingedForm(nearLine, farLine, angles).Folded();
            Point3 one = made.Near[^1] - planned.Near[^1], other = made.Far[^1] - planned.Far[^1], turn = made.Motions[^1].TurnFrom(planned.Motions[^1]);
            double[] values = [one.X, one.Y, one.Z, other.X, other.Y, other.Z, turn.Dot(line), turn.Dot(across)];
            for (var k = 0; k < values.Length; k++)
                draws[k][d] = values[k];
        }

        foreach (var (end, first) in report.Ends.Zip([0, 3]))
        {
            Mean(end.Exact.Bias.X, draws[first]);
            Mean(end.Exact.Bias.Y, draws[first + 1]);
            Mean(end.Exact.BiasZMm, draws[first + 2]);
            var covariance = end.Exact.Covariance;
            Product(covariance.XxMm2, draws[first], draws[first]);
            Product(covariance.YyMm2, draws[first + 1], draws[first + 1]);
            Product(covariance.ZzMm2, draws[first + 2], draws[first + 2]);
            Product(covariance.XyMm2, draws[first], draws[first + 1]);
            Product(covariance.XzMm2, draws[first], draws[first + 2]);
            Product(covariance.YzMm2, draws[first + 1], draws[first + 2]);
        }

        // Turns are of first order.
        Near(report.ClosingScatter.Radians, Math.Sqrt(draws[6].Average(turn => turn * turn) - (draws[6].Average() * draws[6].Average())), 0.04);
        Near(report.ClosingBias.Radians, draws[6].Average(), 0.04);
        Near(report.Twist!.Scatter.Radians, Math.Sqrt(draws[7].Average(turn => turn * turn) - (draws[7].Average() * draws[7].Average())), 0.04);
        Assert.True(report.Twist.Scatter.Radians > 0);

        static void Mean(double expected, double[] draws)
        {
            var mean = draws.Average();
            Within(4 * Math.Sqrt(draws.Average(draw => (draw - mean) * (draw - mean)) / count), expected, mean);
        }

        static void Product(double expected, double[] one, double[] other)
        {
            var (mean, second) = (one.Average(), other.Average());
            double[] products = [.. one.Zip(other, (a, b) => (a - mean) * (b - second))];
            Mean(expected, products);
        }
    }

    // One fold of 90° about an upright line 100 long: its mark off by 1 at the near end only moves the near corner as a straight form's
    // would, and turns the lead-out's plane about the diagonal by 1/100.
    [Fact]
    public void A_line_out_of_square_twists_the_lead_out()
    {
        var form = HingedFormTests.Hinged(new([50, 80], [Math.PI / 2]), 100);
        var report = ToleranceReport.Of(form, new(Angle.Zero, Angle.Zero, 1), null);
        // ν before (0, 1, 0), after (-1, 0, 0): their difference along the lead-out's direction (0, 1, 0) is 1, over 100, for either end.
        Near(Math.Sqrt(2) / 100, report.Twist!.Scatter.Radians, 1e-12);
        Within(1e-12, 0, report.ClosingScatter.Radians);
        Within(1e-12, 1, report.Ends[0].FirstOrder.Covariance.XxMm2);
        Within(1e-12, -1, report.Ends[0].FirstOrder.Covariance.XyMm2);
    }

    [Fact]
    public void The_widest_direction_in_space_is_no_narrower_than_any() =>
        Gen.Double[-3, 3].Array[9].ForAll(values =>
        {
            var spread = default(Covariance);
            for (var i = 0; i < 9; i += 3)
                spread += Covariance.Of(new(values[i], values[i + 1], values[i + 2]));
            var random = new Random(3);
            var best = 0.0;
            for (var i = 0; i < 400; i++)
            {
                var direction = new Point3(Normal(random), Normal(random), Normal(random)).Unit();
                var along = spread.In(direction, direction, direction).XxMm2;
                Assert.True(along <= spread.LargestMm2 * (1 + 1e-9));
                best = Math.Max(best, along);
            }

            Assert.True(best >= 0.85 * spread.LargestMm2);
        }, iter: 50);

    private static void Same(EndSpread straight, EndSpread tapered)
    {
        Within(1e-9, 0, (straight.Bias - tapered.Bias).Length);
        Within(1e-9, straight.Covariance.XxMm2, tapered.Covariance.XxMm2);
        Within(1e-9, straight.Covariance.YyMm2, tapered.Covariance.YyMm2);
        Within(1e-9, straight.Covariance.XyMm2, tapered.Covariance.XyMm2);
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
