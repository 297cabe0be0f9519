using MathNet.Numerics.Integration;

namespace Forming.Curves;

/// <summary>Length of part of an ellipse, an incomplete elliptic integral of the second kind.</summary>
internal static class EllipticLength
{
    /// <summary>Length between two normals.</summary>
    /// <param name="a">Semi-axis along x [mm].</param>
    /// <param name="b">Semi-axis along y [mm].</param>
    /// <param name="from">Outward normal's angle at the start.</param>
    /// <param name="sweep">Turn of the normal.</param>
    /// <returns>Length [mm].</returns>
    public static double Compute(double a, double b, Angle from, Angle sweep)
    {
        // In the eccentric angle t, tan t = (b/a) tan v, the integrand √(a² sin²t + b² cos²t) is bounded by the axes.
        double start = Eccentric(from.Radians), end = Eccentric(from.Radians + sweep.Radians);
        var length = 0.0;
        for (var t = start; t < end;)
        {
            // Quadrants apart, so that a slim ellipse's sharp ends fall on the ends of an interval.
            var next = Math.Min(end, (Math.Floor((t / (Math.PI / 2)) + 1e-12) + 1) * (Math.PI / 2));
            length += DoubleExponentialTransformation.Integrate(Speed, t, next, 1e-13);
            t = next;
        }

        return length;

        double Speed(double t)
        {
            var (sin, cos) = Math.SinCos(t);
            return Math.Sqrt((a * a * sin * sin) + (b * b * cos * cos));
        }

        double Eccentric(double normal)
        {
            var turns = Math.Round(normal / (2 * Math.PI));
            var (sin, cos) = Math.SinCos(normal - (2 * Math.PI * turns));
            return Math.Atan2(b * sin, a * cos) + (2 * Math.PI * turns);
        }
    }
}
