namespace Forming.Prediction;

/// <summary>How far the panel let go lies from the wanted curve, place by place at equal lengths from the first tangent point.</summary>
internal static class CurveMiss
{
    /// <summary>Largest distances over the curved part.</summary>
    /// <param name="curve">The panel let go; it starts at the first tangent point.</param>
    /// <param name="wanted">The wanted curve.</param>
    /// <returns>After the best rigid fit, and with the lead-in flats laid on each other [mm].</returns>
    public static (double FittedMm, double HeldMm) Of(IReadOnlyList<ReleasedPoint> curve, WantedCurve wanted)
    {
        var panel = new List<Point>();
        var aim = new List<Point>();
        var weights = new List<double>();
        for (var i = 0; i < curve.Count && curve[i].AlongMm <= wanted.LengthMm; i++)
        {
            panel.Add(curve[i].Position);
            aim.Add(wanted.At(curve[i].AlongMm).Position);
            weights.Add((curve[Math.Min(i + 1, curve.Count - 1)].AlongMm - curve[Math.Max(i - 1, 0)].AlongMm) / 2);
        }

        var panelCentre = Mean(panel, weights);
        var aimCentre = Mean(aim, weights);
        double dot = 0, cross = 0, held = 0, fitted = 0;
        for (var i = 0; i < panel.Count; i++)
        {
            var (from, to) = (aim[i] - aimCentre, panel[i] - panelCentre);
            dot += weights[i] * from.Dot(to);
            cross += weights[i] * from.Cross(to);
            held = Math.Max(held, (panel[i] - aim[i]).Length);
        }

        var along = Point.Along(Math.Atan2(cross, dot));
        for (var i = 0; i < panel.Count; i++)
        {
            var from = aim[i] - aimCentre;
            var turned = (from.X * along) + (from.Y * along.Left());
            fitted = Math.Max(fitted, (panel[i] - panelCentre - turned).Length);
        }

        return (fitted, held);
    }

    private static Point Mean(List<Point> points, List<double> weights)
    {
        var sum = Point.Origin;
        for (var i = 0; i < points.Count; i++)
            sum += weights[i] * points[i];
        return 1 / weights.Sum() * sum;
    }
}
