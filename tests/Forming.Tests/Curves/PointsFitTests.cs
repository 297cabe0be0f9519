using CsCheck;
using Forming.Curves.Fitting;
using Forming.Results;

namespace Forming.Tests.Curves;

public class PointsFitTests
{
    [Theory]
    [InlineData(4)]
    [InlineData(20)]
    public void Points_on_an_arc_give_its_radius_as_one_piece(int count)
    {
        var fit = PointsFit.Solve(MeasuredCurve.Of(_ => 1 / 80.0, 140, count), 0.1);

        var piece = Assert.Single(fit.Pieces);
        Assert.Equal(80, 1 / piece.StartCurvature, 80e-6);
        Assert.Equal(piece.StartCurvature, piece.EndCurvature);
        Assert.Equal(140, piece.LengthMm, 140e-6);
        Assert.False(fit.TurnsRight);
    }

    [Fact]
    public void An_arc_of_nearly_a_full_turn_is_still_one_piece()
    {
        var fit = PointsFit.Solve(MeasuredCurve.Of(_ => 0.01, 610, 20), 0.1);

        Assert.Equal(0.01, Assert.Single(fit.Pieces).StartCurvature, 1e-8);
    }

    /// <summary>
    /// Fresnel integrals of Abramowitz and Stegun, Handbook of Mathematical Functions (1964), Table 7.7, scaled to the clothoid of
    /// parameter A = 100 mm: curvature s/A².
    /// </summary>
    [Fact]
    public void Published_points_of_a_clothoid_give_its_curvature_at_both_ends()
    {
        Point[] points =
        [
            new(0, 0),
            new(49.92193149, 2.08100934),
            new(97.52876882, 16.37140474),
            new(132.09605731, 51.36521298),
            new(133.51936963, 99.76237113),
        ];

        var fit = PointsFit.Solve(points, 0.01);

        var piece = Assert.Single(fit.Pieces);
        Assert.Equal(0, piece.StartCurvature, 1e-7);
        Assert.Equal(0.02, piece.EndCurvature, 1e-7);
        Assert.Equal(200, piece.LengthMm, 1e-5);
        Assert.True(fit.LargestMissMm < 1e-6);
    }

    [Fact]
    public void A_clothoid_of_a_full_turn_is_still_one_piece()
    {
        var piece = Assert.Single(PointsFit.Solve(MeasuredCurve.Of(s => 0.0628 * s / 200, 200, 30), 0.1).Pieces);

        Assert.Equal(0, piece.StartCurvature, 1e-7);
        Assert.Equal(0.0628, piece.EndCurvature, 1e-7);
    }

    [Fact]
    public void Scatter_inside_the_tolerance_does_not_become_curvature() =>
        Gen.Int[0, 100_000].ForAll(
            seed =>
            {
                var fit = PointsFit.Solve(MeasuredCurve.Of(_ => 0.01, 157, 30, 0.05, seed), 0.15);
                var piece = Assert.Single(fit.Pieces);
                Assert.Equal(0.01, piece.StartCurvature, 1e-4);
                Assert.True(fit.LargestMissMm <= 0.15);
            },
            iter: 50);

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.1)]
    [InlineData(0.01)]
    [InlineData(0.001)]
    public void A_logarithmic_spiral_is_followed_within_the_tolerance(double tolerance)
    {
        var fit = PointsFit.Solve(MeasuredCurve.Of(s => 1 / (50 + (150 * s / 170)), 170, 20), tolerance);

        Assert.True(fit.LargestMissMm <= tolerance);
        Assert.Equal(170, fit.Pieces.Sum(p => p.LengthMm), 0.1);
        AssertContinuous(fit);
    }

    [Fact]
    public void The_miss_is_that_of_the_pieces_laid_among_the_points()
    {
        var points = MeasuredCurve.Of(s => 1 / (50 + (150 * s / 170)), 170, 20);
        var fit = PointsFit.Solve(points, 0.1);

        // The pieces laid from the true start, then turned and shifted a little so that the points lie nearest (three rounds of
        // the linear problem: a shift across the curve and a turn, against each point's distance along the curve's normal).
        var dense = MeasuredCurve.Of(s => CurvatureAt(fit, s), fit.Pieces.Sum(p => p.LengthMm), 4001);
        Assert.Equal(fit.LargestMissMm, RigidMiss.Of(points, dense), 0.25 * fit.LargestMissMm);
    }

    [Fact]
    public void Flats_at_both_ends_of_an_arc_are_found()
    {
        var points = MeasuredCurve.Of(s => s is > 100 and < 257 ? 0.01 : 0, 357, 40, 0.02);

        var fit = PointsFit.Solve(points, 0.1);

        Assert.True(fit.Pieces[0].IsFlat);
        Assert.True(fit.Pieces[^1].IsFlat);
        Assert.InRange(fit.Pieces[0].LengthMm, 75, 110);
        Assert.InRange(fit.Pieces[^1].LengthMm, 75, 110);
        Assert.Equal(1.57, Turn(fit), 0.01);
        Assert.True(fit.LargestMissMm <= 0.1);
        AssertContinuous(fit);
    }

    [Fact]
    public void A_curve_that_bends_both_ways_is_refused_where_it_reverses()
    {
        // kappa falls from 0.01 to -0.01 over 200 mm: the inflection is 100 mm along.
        var points = MeasuredCurve.Of(s => 0.01 * (1 - (s / 100)), 200, 21);

        var refusal = Assert.Throws<NoSolutionException>(() => PointsFit.Solve(points, 0.1));

        Assert.Equal("curve.reverses", refusal.Code);
        Assert.Equal("panel.curve.points", refusal.Subject);
        var place = refusal.Wording.GetArguments().Cast<Figure>().Select(figure => figure.Value).ToArray();
        Assert.Equal(100, place[0], 0.5);
        Assert.Equal(points[10].X, place[1], 0.5);
        Assert.Equal(points[10].Y, place[2], 0.5);
    }

    [Fact]
    public void A_curve_to_the_right_is_the_mirror_image_of_one_to_the_left()
    {
        var left = PointsFit.Solve(MeasuredCurve.Of(s => 0.005 + (s / 20_000), 200, 20), 0.1);
        var right = PointsFit.Solve(MeasuredCurve.Of(s => -0.005 - (s / 20_000), 200, 20), 0.1);

        Assert.True(right.TurnsRight);
        Assert.Equal(left.Pieces.Count, right.Pieces.Count);
        Assert.Equal(left.Pieces[0].StartCurvature, right.Pieces[0].StartCurvature, 1e-8);
        Assert.Equal(left.Pieces[^1].EndCurvature, right.Pieces[^1].EndCurvature, 1e-8);
    }

    [Fact]
    public void Lengths_scale_with_points_and_tolerance()
    {
        var points = MeasuredCurve.Of(s => 1 / (50 + (150 * s / 170)), 170, 20);
        var plain = PointsFit.Solve(points, 0.1);

        Gen.Double[-6, 6].ForAll(
            power =>
            {
                var k = Math.Pow(10, power);
                var scaled = PointsFit.Solve([.. points.Select(p => k * p)], 0.1 * k);
                Assert.Equal(plain.Pieces.Count, scaled.Pieces.Count);
                foreach (var (a, b) in plain.Pieces.Zip(scaled.Pieces))
                {
                    Assert.Equal(1, b.LengthMm / (k * a.LengthMm), 1e-6);
                    Assert.Equal(1, b.StartCurvature * k / a.StartCurvature, 1e-6);
                }
            },
            iter: 20);
    }

    [Fact]
    public void Collinear_points_are_flat() =>
        AssertRefused("curve.flat", [new(0, 0), new(10, 5), new(20, 10.02), new(30, 15), new(44, 22)]);

    [Fact]
    public void Three_points_are_too_few() => AssertRefused("curve.points-too-few", [new(0, 0), new(10, 0), new(20, 5)]);

    [Fact]
    public void More_points_than_five_thousand_are_too_many() =>
        AssertRefused("curve.points-too-many", MeasuredCurve.Of(_ => 0.01, 100, 5001));

    [Theory]
    [InlineData(0)]
    [InlineData(7.5)]
    [InlineData(1e300)]
    public void Points_at_one_place_are_refused(double x) =>
        AssertRefused("curve.points-coincide", [.. Enumerable.Repeat(new Point(x, x), 5)]);

    [Fact]
    public void Points_that_go_back_are_refused() =>
        AssertRefused("curve.points-double-back", [new(0, 0), new(50, 0), new(100, 20), new(60, 2), new(150, 60)]);

    [Theory]
    [InlineData(1e-300)]
    [InlineData(1e300)]
    public void Sizes_that_no_sheet_has_are_refused(double size) =>
        AssertRefused("curve.points-out-of-range", [new(0, 0), new(size, 0), new(2 * size, size), new(2 * size, 2 * size)]);

    [Fact]
    public void A_point_that_stands_out_is_no_reversal_but_cannot_be_fitted()
    {
        var points = MeasuredCurve.Of(_ => 0.01, 157, 20);
        points[7] += new Point(2, -1);

        var refusal = AssertRefused("curve.points-not-fitted", points);

        Assert.Contains("misses by", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("at point", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Numbers_that_are_not_finite_are_the_callers_fault(double x) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PointsFit.Solve([new(0, 0), new(1, x), new(2, 3), new(3, 5)], 0.1));

    [Fact]
    public void A_fit_that_nobody_waits_for_ends() => Assert.Throws<OperationCanceledException>(
        () => PointsFit.Solve(MeasuredCurve.Of(s => 1 / (50 + (150 * s / 170)), 170, 20), 0.001, new CancellationToken(canceled: true)));

    [Fact]
    [Trait("Category", "Long")]
    public void Any_points_end_in_finite_pieces_or_a_refusal()
    {
        var coordinate = Gen.OneOf(Gen.Double[-100, 100], Gen.Double.Where(double.IsFinite), OneOf(0, 1e-300, 1e300, -1e300, double.MaxValue, double.Epsilon));
        var wild = Gen.Select(coordinate, coordinate, (x, y) => new Point(x, y)).Array[0, 40];
        var tame = Gen.Select(Gen.Double[0.5, 2], Gen.Double[-3, 3]).Array[4, 60].Select(steps => Walk(steps));

        Gen.Select(Gen.OneOf(wild, tame), Gen.OneOf(Gen.Double[1e-3, 10], OneOf(1e-300, 1e300)))
            .ForAll((points, tolerance) => AssertFiniteOrRefused(points, tolerance), iter: 200);
    }

    private static Gen<double> OneOf(params double[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Point[] Walk((double Step, double Rise)[] steps)
    {
        var place = Point.Origin;
        return [.. steps.Select(s => place += new Point(s.Step, s.Rise))];
    }

    private static void AssertFiniteOrRefused(Point[] points, double tolerance)
    {
        try
        {
            var fit = PointsFit.Solve(points, tolerance);
            Assert.True(fit.LargestMissMm <= tolerance);
            Assert.All(fit.Pieces, p => Assert.True(double.IsFinite(p.LengthMm) && p.LengthMm > 0));
            Assert.All(fit.Pieces, p => Assert.True(double.IsFinite(p.StartCurvature) && p.StartCurvature >= 0));
            Assert.All(fit.Pieces, p => Assert.True(double.IsFinite(p.EndCurvature) && p.EndCurvature >= 0));
        }
        catch (NoSolutionException refusal)
        {
            Assert.StartsWith("curve.", refusal.Code, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", refusal.Message, StringComparison.Ordinal);
        }
    }

    private static NoSolutionException AssertRefused(string code, Point[] points)
    {
        var refusal = Assert.Throws<NoSolutionException>(() => PointsFit.Solve(points, 0.1));
        Assert.Equal(code, refusal.Code);
        return refusal;
    }

    private static void AssertContinuous(PointsFit fit)
    {
        for (var i = 1; i < fit.Pieces.Count; i++)
            Assert.Equal(fit.Pieces[i - 1].EndCurvature, fit.Pieces[i].StartCurvature);
    }

    private static double Turn(PointsFit fit) => fit.Pieces.Sum(p => p.LengthMm * (p.StartCurvature + p.EndCurvature) / 2);

    private static double CurvatureAt(PointsFit fit, double s)
    {
        foreach (var piece in fit.Pieces)
        {
            if (s <= piece.LengthMm) return piece.StartCurvature + ((piece.EndCurvature - piece.StartCurvature) * s / piece.LengthMm);
            s -= piece.LengthMm;
        }

        return fit.Pieces[^1].EndCurvature;
    }
}
