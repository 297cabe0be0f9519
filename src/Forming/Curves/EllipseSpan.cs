using MathNet.Numerics.Integration;

namespace Forming.Curves;

/// <summary>Part of an ellipse: <c>rho = a²b²/(a² cos²v + b² sin²v)^1.5</c>, v the outward normal's angle from the x axis.</summary>
/// <param name="SemiAxisXMm">a on the measured face [mm], &gt; 0.</param>
/// <param name="SemiAxisYMm">b on the measured face [mm], &gt; 0.</param>
/// <param name="FromNormal">v at the start.</param>
/// <param name="Sweep">Growth of v, &gt; 0.</param>
/// <param name="OffsetMm">Distance from the measured to the described face [mm].</param>
public sealed record EllipseSpan(double SemiAxisXMm, double SemiAxisYMm, Angle FromNormal, Angle Sweep, double OffsetMm)
    : BendSpan(Sweep, OffsetMm)
{
    /// <inheritdoc/>
    protected override double MeasuredLengthMm { get; } = EllipticLength.Compute(SemiAxisXMm, SemiAxisYMm, FromNormal, Sweep);

    /// <inheritdoc/>
    protected override double MeasuredTightestRadiusMm => ExtremeRadius(smallest: true);

    /// <inheritdoc/>
    protected override double MeasuredGentlestRadiusMm => ExtremeRadius(smallest: false);

    // An ellipse is bent the most at the ends of its longer axis.
    /// <inheritdoc/>
    public override IReadOnlyList<double> InnerPeaks
    {
        get
        {
            if (SemiAxisXMm == SemiAxisYMm)
                return [];
            double from = FromNormal.Radians, to = from + Sweep.Radians;
            var ofLongAxis = SemiAxisXMm > SemiAxisYMm ? 0 : Math.PI / 2;
            var peaks = new List<double>();
            for (var half = Math.Floor((from - ofLongAxis) / Math.PI) + 1; ofLongAxis + (half * Math.PI) < to; half++)
                peaks.Add((ofLongAxis + (half * Math.PI) - from) / Sweep.Radians);
            return peaks;
        }
    }

    /// <inheritdoc/>
    protected override SpanRates MeasuredRatesAt(double u)
    {
        var radius = RadiusAt(FromNormal.Radians + (u * Sweep.Radians));
        return new(Sweep.Radians * radius, 1 / radius);
    }

    private double RadiusAt(double normal)
    {
        var (sin, cos) = Math.SinCos(normal);
        double x = SemiAxisXMm * cos, y = SemiAxisYMm * sin;
        var q = (x * x) + (y * y);
        return SemiAxisXMm * SemiAxisXMm * SemiAxisYMm * SemiAxisYMm / (q * Math.Sqrt(q));
    }

    // The radius is extreme at the ends and wherever the normal lies along an axis.
    private double ExtremeRadius(bool smallest)
    {
        double from = FromNormal.Radians, to = from + Sweep.Radians;
        var extreme = smallest ? Math.Min(RadiusAt(from), RadiusAt(to)) : Math.Max(RadiusAt(from), RadiusAt(to));
        for (var quarter = Math.Ceiling(from / (Math.PI / 2)); quarter * (Math.PI / 2) < to; quarter++)
        {
            var radius = RadiusAt(quarter * (Math.PI / 2));
            extreme = smallest ? Math.Min(extreme, radius) : Math.Max(extreme, radius);
        }

        return extreme;
    }
}

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
