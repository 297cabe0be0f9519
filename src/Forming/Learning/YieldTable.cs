using MathNet.Numerics.Interpolation;

namespace Forming.Learning;

/// <summary>
/// What a costly calculation gives by ln(yield factor) and ln(n/nominal n): calculated at a few nodes, smooth between them.
/// </summary>
/// <remarks>
/// Cubic splines along the yield; along n a parabola, whose slope and bend change with the yield. Past the outermost nodes that could be
/// calculated the values go on straight: <see cref="Covers"/> says where.
/// </remarks>
public sealed class YieldTable
{
    /// <summary>
    /// Nodes of ln(yield factor): close where sheets of a grade lie, out to half and twice the grade's yield.
    /// </summary>
    private static readonly double[] Nodes = [0, -0.08, 0.08, -0.17, 0.17, -0.28, 0.28, -0.42, 0.42, -0.6, 0.6];

    /// <summary>Of these nodes n is varied too.</summary>
    private static readonly double[] HardeningNodes = [0, -0.28, 0.28];

    private const int FewestNodes = 4;

    /// <summary>Where none of the first so many has values, sheets of the grade have none, and the others are not tried.</summary>
    private const int FirstNodes = 5;

    private readonly CubicSpline[] _values;
    private readonly (double At, double[] Slope, double[] Bend)[] _hardening;

    private YieldTable(
        IReadOnlyList<(double At, double[] Values)> followed, (double At, double[] Slope, double[] Bend)[] hardening)
    {
        double[] at = [.. followed.Select(node => node.At)];
        (Low, High) = (at[0], at[^1]);
        _hardening = hardening;
        _values =
        [
            .. Enumerable.Range(0, followed[0].Values.Length).Select(output =>
                CubicSpline.InterpolateNaturalSorted(at, [.. followed.Select(node => node.Values[output])])),
        ];
    }

    /// <summary>Lowest ln(yield factor) that was calculated.</summary>
    public double Low { get; }

    /// <summary>Highest ln(yield factor) that was calculated.</summary>
    public double High { get; }

    /// <summary>Whether a sheet lies within what was calculated.</summary>
    /// <param name="lnFactor">ln(yield factor).</param>
    public bool Covers(double lnFactor) => lnFactor >= Low && lnFactor <= High;

    /// <summary>Calculates the nodes.</summary>
    /// <param name="calculate">
    /// The values at ln(yield factor) and ln(n/nominal n), always as many and smooth in both; null where there are none.
    /// </param>
    /// <param name="hardeningStep">How far n is varied to either side, in ln(n); 0 leaves it.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>Null where fewer than four nodes have values, or none of the grade's own sheets.</returns>
    public static YieldTable? Of(Func<double, double, double[]?> calculate, double hardeningStep, CancellationToken cancellation = default)
    {
        var followed = new List<(double At, double[] Values)>(Nodes.Length);
        foreach (var node in Nodes)
        {
            cancellation.ThrowIfCancellationRequested();
            if (calculate(node, 0) is { } values)
                followed.Add((node, values));
            if (followed.Count == 0 && node == Nodes[FirstNodes - 1])
                return null;
        }

        if (followed.Count < FewestNodes)
            return null;
        followed.Sort((a, b) => a.At.CompareTo(b.At));
        var hardening = new List<(double At, double[] Slope, double[] Bend)>(HardeningNodes.Length);
        foreach (var node in hardeningStep > 0 ? HardeningNodes : [])
        {
            cancellation.ThrowIfCancellationRequested();
            if (followed.Find(one => one.At == node).Values is { } middle
                && calculate(node, -hardeningStep) is { } less
                && calculate(node, hardeningStep) is { } more)
            {
                hardening.Add((
                    node,
                    [.. middle.Select((_, i) => (more[i] - less[i]) / (2 * hardeningStep))],
                    [.. middle.Select((value, i) => (more[i] + less[i] - (2 * value)) / (hardeningStep * hardeningStep))]));
            }
        }

        return new(followed, [.. hardening.OrderBy(one => one.At)]);
    }

    /// <summary>One of the values.</summary>
    /// <param name="output">Its place in what was calculated.</param>
    /// <param name="lnFactor">ln(yield factor).</param>
    /// <param name="lnHardening">ln(n/nominal n).</param>
    public double At(int output, double lnFactor, double lnHardening = 0)
    {
        var spline = _values[output];
        var inside = Math.Clamp(lnFactor, Low, High);
        var value = spline.Interpolate(inside);
        if (inside != lnFactor)
            value += spline.Differentiate(inside) * (lnFactor - inside);
        if (lnHardening == 0 || _hardening.Length == 0)
            return value;
        double slope = Between(node => node.Slope[output], inside), bend = Between(node => node.Bend[output], inside);
        return value + (lnHardening * (slope + (lnHardening / 2 * bend)));
    }

    // Straight between the nodes and past them.
    private double Between(Func<(double At, double[] Slope, double[] Bend), double> of, double at)
    {
        if (_hardening.Length == 1)
            return of(_hardening[0]);
        var found = Array.FindIndex(_hardening, node => node.At >= at);
        var next = found < 0 ? _hardening.Length - 1 : Math.Max(1, found);
        var (low, high) = (_hardening[next - 1], _hardening[next]);
        return of(low) + ((of(high) - of(low)) * (at - low.At) / (high.At - low.At));
    }
}
