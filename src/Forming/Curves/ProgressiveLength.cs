namespace Forming.Curves;

/// <summary>The turned angle of a progressive bend that is measured along itself, in one unit of length.</summary>
public static class ProgressiveLength
{
    /// <summary>
    /// Turned angle, from the integral of the curvature along the length: mean curvature, mean radius and logarithmic mean radius.
    /// </summary>
    /// <param name="startRadius">Radius at the start, &gt; 0; null is flat, clothoid only.</param>
    /// <param name="endRadius">Radius at the end, &gt; 0; null is flat, clothoid only.</param>
    /// <param name="law">How the radius goes from one to the other.</param>
    /// <param name="length">Length along the bend, &gt; 0.</param>
    public static Angle SweepOf(double? startRadius, double? endRadius, ProgressiveLaw law, double length) => new(law switch
    {
        ProgressiveLaw.Clothoid => length * ((1 / startRadius ?? 0) + (1 / endRadius ?? 0)) / 2,
        ProgressiveLaw.Involute => 2 * length / (startRadius!.Value + endRadius!.Value),
        _ => length / LogarithmicMean(startRadius!.Value, endRadius!.Value),
    });

    /// <summary>Length of a progressive bend.</summary>
    /// <param name="startRadius">Radius at the start, &gt; 0; null is flat, clothoid only.</param>
    /// <param name="endRadius">Radius at the end, &gt; 0; null is flat, clothoid only.</param>
    /// <param name="law">How the radius goes from one to the other.</param>
    /// <param name="sweep">Turned angle.</param>
    public static double Of(double? startRadius, double? endRadius, ProgressiveLaw law, Angle sweep) =>
        sweep.Radians / SweepOf(startRadius, endRadius, law, 1).Radians;

    private static double LogarithmicMean(double a, double b)
    {
        var log = Math.Log(b / a);
        return Math.Abs(log) < 1e-9 ? (a + b) / 2 : (b - a) / log;
    }
}
