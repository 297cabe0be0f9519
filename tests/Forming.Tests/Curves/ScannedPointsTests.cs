using CsCheck;
using Forming.Curves;
using Forming.Curves.Fitting;
using Forming.Jobs;
using Forming.Plans;
using Forming.Results;

namespace Forming.Tests.Curves;

/// <summary>Points that scatter, and points that lie any way round.</summary>
public class ScannedPointsTests
{
    /// <summary>A pattern with its tolerance: an arc, a clothoid, a spiral, or a bend between flats; measured or scanned.</summary>
    private static readonly Gen<(Point[] Points, double Tolerance)> Patterns =
        Gen.Select(Gen.Int[0, 3], Gen.Double[40, 300], Gen.Double[40, 300], Gen.Double[100, 300], Gen.Int[10, 250], Gen.Double[1.2, 7], Gen.Int[0, 100_000])
            .Select((kind, from, to, length, count, wide, seed) =>
            {
                length = Math.Min(length, 4 * Math.Min(from, to));
                Func<double, double> curvature = kind switch
                {
                    0 => _ => 1 / from,
                    1 => s => (1 / from) + (((1 / to) - (1 / from)) * s / length),
                    2 => s => 1 / (from + ((to - from) * s / length)),
                    _ => s => s > 0.3 * length && s < 0.7 * length ? 1 / from : 0,
                };
                var sigma = count < 50 ? 0.02 : 0.02 + (0.28 * (seed % 100) / 100);
                return (ScannedCurve.Of(curvature, length, count, sigma, seed), wide * sigma);
            });

    [Fact]
    public void A_pattern_is_read_whichever_way_it_lies()
    {
        var points = MeasuredCurve.Of(s => 1 / (60 + s), 150, 12);
        var plain = PointsFit.Solve(points, 0.1);

        for (var degrees = 0; degrees < 360; degrees++)
        {
            var along = Point.Along(Angle.FromDegrees(degrees).Radians);
            AssertSame(plain, PointsFit.Solve([.. points.Select(p => p.TurnedTo(along))], 0.1));
        }
    }

    [Fact]
    [Trait("Category", "Long")]
    public void Turning_shifting_mirroring_or_reversing_a_pattern_changes_nothing_but_the_frame() =>
        Gen.Select(Patterns, Gen.Double[0, 7], Gen.Double[-500, 500], Gen.Double[-500, 500]).ForAll(
            (pattern, turn, x, y) =>
            {
                var (points, tolerance) = pattern;
                var along = Point.Along(turn);
                var plain = Outcome(points, tolerance);
                AssertSameOutcome(plain, Outcome([.. points.Select(p => p.TurnedTo(along))], tolerance));
                AssertSameOutcome(plain, Outcome([.. points.Select(p => p + new Point(x, y))], tolerance));
                AssertSameOutcome(plain, Outcome([.. points.Select(p => new Point(p.X, -p.Y))], tolerance), isMirrored: true);
                AssertSameOutcome(plain, Outcome([.. points.Reverse()], tolerance), isReversed: true);
            },
            iter: 25);

    [Fact]
    [Trait("Category", "Long")]
    public void A_tolerance_that_a_refusal_names_is_enough() =>
        Gen.Select(Patterns, Gen.Double[0.2, 0.9]).ForAll(
            (pattern, share) =>
            {
                var (fit, refusal) = Outcome(pattern.Points, share * pattern.Tolerance);
                if (fit is not null)
                    return;
                Assert.Equal("curve.points-not-fitted", refusal!.Code);
                var reachable = refusal.Allowed!.GetArguments().Cast<Figure>().Single().Value;
                Assert.InRange(PointsFit.Solve(pattern.Points, reachable).LargestMissMm, 0, reachable);
            },
            iter: 25);

    [Theory]
    [InlineData(200, 0.5)]
    [InlineData(500, 0.3)]
    public void A_noisy_scan_of_a_circle_is_fitted_as_one_where_the_tolerance_allows(int count, double sigma)
    {
        for (var seed = 1; seed <= 5; seed++)
        {
            var fit = PointsFit.Solve(ScannedCurve.Of(_ => 0.01, 157, count, sigma, seed), 4.5 * sigma);

            Assert.Equal(0.01, Assert.Single(fit.Pieces).StartCurvature, 1e-4);
            Assert.InRange(fit.LargestMissMm, 0, 4.5 * sigma);
        }
    }

    [Fact]
    public void Too_fine_a_tolerance_for_a_noisy_circle_is_told_about_what_the_circle_misses_by()
    {
        var points = ScannedCurve.Of(_ => 0.01, 157, 500, 0.3, 2);
        var circle = PointsFit.Solve(points, 3).LargestMissMm;

        var refusal = Assert.Throws<NoSolutionException>(() => PointsFit.Solve(points, 0.3));

        Assert.InRange(refusal.Wording.GetArguments().OfType<Figure>().ElementAt(1).Value, 0.75 * circle, 1.02 * circle);
    }

    [Fact]
    [Trait("Category", "Long")]
    public void Dense_scans_are_fitted_or_refused_with_a_figure() =>
        Gen.Select(Gen.Int[800, 2000], Gen.Double[0.05, 0.3], Gen.Double[1, 6], Gen.Int[0, 2], Gen.Int[0, 100_000]).ForAll(
            (count, sigma, wide, kind, seed) =>
            {
                var curvature = kind switch
                {
                    0 => ScannedCurve.BendBetweenFlats(80, 60, 70),
                    1 => s => 1 / (60 + s),
                    _ => _ => 0.008,
                };
                var (fit, refusal) = Outcome(ScannedCurve.Of(curvature, 230, count, sigma, seed), wide * sigma);
                Assert.True(wide < 4.5 || fit is not null);
                if (fit is not null)
                    Assert.InRange(fit.LargestMissMm, 0, wide * sigma);
                else
                    Assert.All(refusal!.Wording.GetArguments().OfType<Figure>(), figure => Assert.True(double.IsFinite(figure.Value)));
            },
            iter: 16);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    public void A_measured_bend_between_flats_asks_for_the_form_of_the_drawn_one(double tolerance)
    {
        var drawn = FormOf(new SegmentsCurve([new FlatCurve(100), new ArcCurve(120, Angle.FromDegrees(50)), new FlatCurve(100)]));
        var length = 200 + (120 * 50 * Math.PI / 180);
        foreach (var count in new[] { 40, 200 })
        {
            var exact = MeasuredCurve.Of(ScannedCurve.BendBetweenFlats(100, 120, 50), length, count);
            Point[] read = [.. exact.Select(p => new Point(Math.Round(p.X, 1), Math.Round(p.Y, 1)))];

            Assert.Equal(drawn, FormOf(new PointsCurve(read, tolerance)), 2.0);
        }
    }

    [Fact]
    public void A_wide_tolerance_does_not_blur_a_bend_between_flats()
    {
        var points = ScannedCurve.Of(ScannedCurve.BendBetweenFlats(60, 250, 15), 185.4, 300, 0.1, 4);

        var fit = PointsFit.Solve(points, 2);

        Assert.True(fit.Pieces[0].IsFlat);
        Assert.True(fit.Pieces[^1].IsFlat);
        Assert.Equal(1.0 / 250, fit.Pieces.Max(p => p.StartCurvature), 4e-4);
    }

    [Fact]
    public void Points_that_scatter_along_the_curve_are_in_order_all_the_same()
    {
        // 1500 points on 150 mm: each is moved by about three times its distance from the next.
        var fit = PointsFit.Solve(ScannedCurve.Of(_ => 0.01, 150, 1500, 0.3, 8), 1.5);

        Assert.Equal(0.01, Assert.Single(fit.Pieces).StartCurvature, 1e-4);
    }

    [Fact]
    public void A_scan_there_and_back_is_refused_in_words()
    {
        var there = ScannedCurve.Of(_ => 0.01, 150, 400, 0.05, 1);

        var refusal = Assert.Throws<NoSolutionException>(() => PointsFit.Solve([.. there, .. there.Reverse()], 0.3));

        Assert.Equal("curve.points-double-back", refusal.Code);
        Assert.Contains("turns back on point", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("list the points in order along the curve", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_points_exchanged_are_named_counted_from_one()
    {
        var points = MeasuredCurve.Of(_ => 0.01, 150, 31);
        (points[11], points[14]) = (points[14], points[11]);

        var refusal = Assert.Throws<NoSolutionException>(() => PointsFit.Solve(points, 0.1));

        Assert.Equal("curve.points-double-back", refusal.Code);
        Assert.Contains("turns back on point 12 (counted from 1)", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_scatters_more_than_its_tolerance_shows_no_bend()
    {
        var refusal = Assert.Throws<NoSolutionException>(() => PointsFit.Solve(ScannedCurve.Of(_ => 0, 150, 300, 0.3, 1), 0.2));

        Assert.StartsWith("curve.", refusal.Code, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Five_thousand_points_are_fitted() =>
        Assert.InRange(PointsFit.Solve(ScannedCurve.Of(s => 1 / (60 + s), 200, 5000, 0.1, 1), 0.6).LargestMissMm, 0, 0.6);

    [Fact]
    public void A_search_among_thousands_of_points_ends_when_nobody_waits() => Assert.Throws<OperationCanceledException>(
        () => PointsFit.Solve(ScannedCurve.Of(_ => 0.01, 200, 3000, 0.3, 1), 0.2, new CancellationToken(canceled: true)));

    private static double FormOf(PanelCurve curve)
    {
        var panel = Workshop.Panel(curve) with { Sheet = new(Workshop.Of("al-5052-h32"), 1.6), LeadOutMm = 220 };
        return FormPlan.Compute(new FormJob(panel, Workshop.Form(), Workshop.Brake, Workshop.Marks)).Form.Sweep.Degrees;
    }

    private static (PointsFit? Fit, NoSolutionException? Refusal) Outcome(Point[] points, double tolerance)
    {
        try
        {
            return (PointsFit.Solve(points, tolerance), null);
        }
        catch (NoSolutionException refusal)
        {
            return (null, refusal);
        }
    }

    private static void AssertSameOutcome(
        (PointsFit? Fit, NoSolutionException? Refusal) one, (PointsFit? Fit, NoSolutionException? Refusal) other, bool isMirrored = false, bool isReversed = false)
    {
        Assert.Equal(one.Refusal?.Code, other.Refusal?.Code);
        if (one.Fit is null || other.Fit is null)
            return;
        Assert.Equal(one.Fit.TurnsRight, other.Fit.TurnsRight != (isMirrored || isReversed));
        AssertSame(one.Fit, isReversed ? Reversed(other.Fit) : other.Fit);
    }

    private static PointsFit Reversed(PointsFit fit) => fit with
    {
        Pieces = [.. fit.Pieces.Reverse().Select(p => new CurvaturePiece(p.LengthMm, p.EndCurvature, p.StartCurvature))],
    };

    private static void AssertSame(PointsFit one, PointsFit other)
    {
        Assert.Equal(one.Pieces.Count, other.Pieces.Count);
        Assert.Equal(one.LargestMissMm, other.LargestMissMm, 1e-6);
        foreach (var (a, b) in one.Pieces.Zip(other.Pieces))
        {
            Assert.Equal(a.LengthMm, b.LengthMm, 1e-5 * a.LengthMm);
            Assert.Equal(a.StartCurvature, b.StartCurvature, 1e-8);
            Assert.Equal(a.EndCurvature, b.EndCurvature, 1e-8);
        }
    }
}
