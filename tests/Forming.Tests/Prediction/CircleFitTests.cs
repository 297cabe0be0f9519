using CsCheck;
using Forming.Prediction;

namespace Forming.Tests.Prediction;

/// <summary>The circle nearest to a run of points.</summary>
public class CircleFitTests
{
    [Fact]
    public void Points_of_a_circle_give_back_its_curvature() =>
        Gen.Select(Gen.Double[-1, 1], Gen.Double[0.05, 3], Gen.Double[0, 6.2], Gen.Double[-500, 500])
            .Where((curvature, _, _, _) => Math.Abs(curvature) > 1e-4)
            .ForAll((curvature, sweep, heading, shift) =>
            {
                var radius = 1 / curvature;
                var points = Enumerable.Range(0, 40).Select(i =>
                {
                    var turn = heading + (Math.Sign(curvature) * sweep * i / 39);
                    return new Point(shift, -shift) + (radius * (Point.Along(turn) - Point.Along(heading)).Left());
                }).Select(point => new Point(point.Y, -point.X)).ToArray();
                Workshop.Near(curvature, CircleFit.Curvature(points), 1e-7);
            });

    [Fact]
    public void Points_of_a_line_have_no_curvature()
    {
        var points = Enumerable.Range(0, 20).Select(i => new Point(3 + (2 * i), 7 - i)).ToArray();
        Assert.Equal(0, CircleFit.Curvature(points), 1e-12);
    }

    // Sagitta of a chord of 200 at radius 1000 is 5.0126; the middle one of three points is moved, and the circle follows it.
    [Fact]
    public void Three_points_lie_on_their_circle()
    {
        Point[] points = [new(-100, 5.012563), new(0, 0), new(100, 5.012563)];
        Workshop.Near(1 / 1000.0, CircleFit.Curvature(points), 1e-6);
    }
}
