namespace Forming.Tests.Curves;

/// <summary>Points as a scanner gives them: scattered along the curve as well as across it.</summary>
internal static class ScannedCurve
{
    /// <summary>Evenly spaced points, each moved by normal scatter in both directions.</summary>
    /// <param name="curvature">Curvature over arc length [1/mm].</param>
    /// <param name="length">Length of the curve [mm].</param>
    /// <param name="count">How many points.</param>
    /// <param name="sigma">Standard deviation in each direction [mm].</param>
    /// <param name="seed">Where the scatter is drawn from.</param>
    public static Point[] Of(Func<double, double> curvature, double length, int count, double sigma, int seed)
    {
        var random = new Random(seed);
        return [.. MeasuredCurve.Of(curvature, length, count).Select(p => p + (sigma * Normal(random)))];
    }

    /// <summary>Curvature of a bend of one radius between two flats.</summary>
    /// <param name="flat">Length of the first flat [mm].</param>
    /// <param name="radius">Radius [mm].</param>
    /// <param name="degrees">How far it bends [°].</param>
    public static Func<double, double> BendBetweenFlats(double flat, double radius, double degrees) =>
        s => s > flat && s < flat + (radius * degrees * Math.PI / 180) ? 1 / radius : 0;

    // Box and Muller: two normal numbers from two even ones.
    private static Point Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Point.Along(2 * Math.PI * random.NextDouble());
}
