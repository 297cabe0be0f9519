using Forming.Numerics;

namespace Forming.Prediction;

/// <summary>How far the panel let go lies from the wanted curve, place by place at equal lengths from the first tangent point.</summary>
internal static class CurveMiss
{
    /// <summary>Largest distances over the curved part.</summary>
    /// <param name="curve">The panel let go; the first tangent point is its origin.</param>
    /// <param name="wanted">The wanted curve.</param>
    /// <returns>After the best rigid fit, and with the lead-in flats laid on each other [mm].</returns>
    public static (double FittedMm, double HeldMm) Of(IReadOnlyList<ReleasedPoint> curve, WantedCurve wanted)
    {
        var panel = new List<Point>();
        var aim = new List<Point>();
        var weights = new List<double>();
        for (var i = 0; i < curve.Count && curve[i].AlongMm <= wanted.LengthMm; i++)
        {
            if (curve[i].AlongMm < 0)
                continue;
            panel.Add(curve[i].Position);
            aim.Add(wanted.At(curve[i].AlongMm).Position);
            weights.Add((curve[Math.Min(i + 1, curve.Count - 1)].AlongMm - curve[Math.Max(i - 1, 0)].AlongMm) / 2);
        }

        var held = panel.Zip(aim, (here, there) => (here - there).Length).Max();
        return (RigidFit.Of(aim, panel, weights).MissesMm.Max(), held);
    }
}
