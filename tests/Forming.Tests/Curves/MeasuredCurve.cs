using MathNet.Numerics.Integration;

namespace Forming.Tests.Curves;

/// <summary>Points on a curve of given curvature, by MathNet's quadrature, scattered along its normal.</summary>
internal static class MeasuredCurve
{
    /// <summary>Evenly spaced points from (3, -7), heading 0.3 rad off the x axis.</summary>
    public static Point[] Of(Func<double, double> curvature, double length, int count, double scatter = 0, int seed = 1)
    {
        const int Substeps = 8;
        var random = new Random(seed);
        var (place, angle, step) = (new Point(3, -7), 0.3, length / (count - 1) / Substeps);
        var points = new Point[count];
        for (var j = 0; j < count; j++)
        {
            points[j] = place + (((random.NextDouble() * 2) - 1) * scatter * Point.Along(angle).Left());
            for (var sub = 0; sub < Substeps; sub++)
            {
                var (from, start) = (((j * Substeps) + sub) * step, angle);
                double AngleAt(double s) => start + GaussLegendreRule.Integrate(curvature, from, s, 4);
                place += new Point(
                    GaussLegendreRule.Integrate(s => Math.Cos(AngleAt(s)), from, from + step, 5),
                    GaussLegendreRule.Integrate(s => Math.Sin(AngleAt(s)), from, from + step, 5));
                angle = AngleAt(from + step);
            }
        }

        return points;
    }
}
