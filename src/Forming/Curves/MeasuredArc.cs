using MathNet.Numerics.RootFinding;

namespace Forming.Curves;

/// <summary>
/// An arc as people measure it: by any two of radius, turned angle, chord, rise and length along the arc, in one unit of length. School
/// geometry of the circle: c = 2 R sin(s/2), h = R (1 - cos(s/2)), L = R s.
/// </summary>
/// <param name="Radius">Radius R, &gt; 0, or null where it was not measured.</param>
/// <param name="Sweep">Turned angle s, above 0 and below a full turn, or null.</param>
/// <param name="Chord">Chord c from end to end, &gt; 0, or null.</param>
/// <param name="Rise">Rise h of the middle over the chord, &gt; 0, or null.</param>
/// <param name="Length">Length L along the arc, &gt; 0, or null.</param>
public sealed record MeasuredArc(double? Radius, Angle? Sweep, double? Chord, double? Rise, double? Length)
{
    // Where the rise over the length is largest: the root of s sin(s/2) = 2 (1 - cos(s/2)), 267.1°.
    private const double MostRiseAt = 4.662244740828845;

    private const double FullTurn = 2 * Math.PI;

    /// <summary>How many measures there are.</summary>
    public int Count => new[] { Radius, Sweep?.Radians, Chord, Rise, Length }.Count(measure => measure is not null);

    /// <summary>
    /// Radius and turned angle by the first two measures, in the order radius, turned angle, chord, rise, length; of two arcs over one
    /// chord the one up to a half turn, of two with one length and one rise the flatter. Null where no arc has both.
    /// </summary>
    public (double Radius, Angle Sweep)? Solve()
    {
        var sweep = (Radius, Sweep, Chord, Rise, Length) switch
        {
            (_, { } turned, _, _, _) => turned.Radians,
            ({ } r, _, { } c, _, _) => 2 * Math.Asin(c / (2 * r)),
            ({ } r, _, _, { } h, _) => 2 * Math.Acos(1 - (h / r)),
            ({ } r, _, _, _, { } l) => l / r,
            (_, _, { } c, { } h, _) => 4 * Math.Atan(2 * h / c),
            (_, _, { } c, _, { } l) => Turned(c / l, s => 2 * Math.Sin(s / 2) / s, FullTurn),
            (_, _, _, { } h, { } l) => Turned(h / l, s => (1 - Math.Cos(s / 2)) / s, MostRiseAt),
            _ => double.NaN,
        };
        if (!(sweep is > 0 and < FullTurn * (1 + 1e-12)))
            return null;
        var radius = Radius
            ?? Chord / (2 * Math.Sin(sweep / 2))
            ?? Rise / (1 - Math.Cos(sweep / 2))
            ?? Length / sweep;
        return radius is > 0 and < double.PositiveInfinity ? (radius.Value, new(sweep)) : null;
    }

    /// <summary>Every measure of an arc.</summary>
    /// <param name="radius">Its radius.</param>
    /// <param name="sweep">Its turned angle.</param>
    public static MeasuredArc Of(double radius, Angle sweep) => new(
        radius, sweep, 2 * radius * Math.Sin(sweep.Radians / 2), radius * (1 - Math.Cos(sweep.Radians / 2)), radius * sweep.Radians);

    /// <summary>The arc from one point through another to a third; null where they lie on a line or together.</summary>
    /// <param name="from">First point.</param>
    /// <param name="by">A point between.</param>
    /// <param name="to">Last point.</param>
    public static MeasuredArc? Through(Point from, Point by, Point to)
    {
        Point first = by - from, whole = to - from;
        var twice = 2 * first.Cross(whole);
        var spread = Math.Max(first.Length, whole.Length);
        if (!(Math.Abs(twice) > 1e-9 * spread * spread))
            return null;
        var (a, b) = (first.Dot(first), whole.Dot(whole));
        var centre = new Point(((whole.Y * a) - (first.Y * b)) / twice, ((first.X * b) - (whole.X * a)) / twice);
        var (start, end) = (-1 * centre, whole - centre);
        var turned = Math.Atan2(start.Cross(end), start.Dot(end)) * Math.Sign(twice);
        return Of(centre.Length, new(turned > 0 ? turned : turned + FullTurn));
    }

    // The ratio falls (chord) or rises (rise) steadily up to there.
    private static double Turned(double ratio, Func<double, double> ratioAt, double most)
    {
        const double least = 1e-6;
        double near = ratioAt(least), far = ratioAt(most);
        return ratio < Math.Min(near, far) || ratio > Math.Max(near, far)
            ? double.NaN
            : Brent.FindRoot(s => ratioAt(s) - ratio, least, most, 1e-14, 200);
    }
}
