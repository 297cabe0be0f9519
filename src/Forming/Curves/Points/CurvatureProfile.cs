namespace Forming.Curves.Points;

/// <summary>Curvature as a broken line over arc length, knots with values, and which unknown of a fit moves which value.</summary>
/// <param name="knots">[m ≥ 2] arc lengths, rising from 0; the last is the curve's length.</param>
/// <param name="values">[m] curvature at the knots.</param>
/// <param name="unknowns">[m] index of the unknown that a value follows; knots may share one, <see cref="HeldFlat"/> = held at 0.</param>
internal sealed class CurvatureProfile(double[] knots, double[] values, int[] unknowns)
{
    /// <summary>Stands for no unknown: the value is held at 0.</summary>
    public const int HeldFlat = -1;

    /// <summary>Arc lengths of the knots.</summary>
    public double[] Knots { get; } = knots;

    /// <summary>Curvature at the knots.</summary>
    public double[] Values { get; } = values;

    /// <summary>Index of the unknown that each value follows.</summary>
    public int[] Unknowns { get; } = unknowns;

    /// <summary>How many curvatures a fit may choose.</summary>
    public int UnknownCount { get; } = unknowns.Max() + 1;

    /// <summary>Length of the curve.</summary>
    public double Length => Knots[^1];

    /// <summary>The largest curvature of either sign.</summary>
    public double Peak => Values.Max(Math.Abs);

    /// <summary>One curvature from end to end: an arc.</summary>
    /// <param name="length">Length of the curve.</param>
    /// <param name="curvature">Its curvature.</param>
    public static CurvatureProfile Arc(double length, double curvature) => new([0, length], [curvature, curvature], [0, 0]);

    /// <summary>A free curvature at each knot.</summary>
    /// <param name="knots">[m ≥ 2] arc lengths, rising from 0.</param>
    /// <param name="values">[m] curvature at the knots.</param>
    public static CurvatureProfile Free(double[] knots, double[] values) => new(knots, values, [.. Enumerable.Range(0, knots.Length)]);

    /// <summary>A copy that can be changed without touching this one.</summary>
    public CurvatureProfile Copy() => new([.. Knots], [.. Values], Unknowns);

    /// <summary>The same curvature carried over to other knots, each value free.</summary>
    /// <param name="knots">[m ≥ 2] arc lengths, rising from 0 to this length.</param>
    public CurvatureProfile On(double[] knots) => Free(knots, Array.ConvertAll(knots, At));

    /// <summary>A copy in which some knots are held at no curvature.</summary>
    /// <param name="isFlat">Whether the knot with this index is to be held, beside those already held.</param>
    public CurvatureProfile Flattened(Func<int, bool> isFlat)
    {
        var copy = Values.ToArray();
        var unknowns = new int[copy.Length];
        var free = 0;
        for (var k = 0; k < copy.Length; k++)
        {
            var held = Unknowns[k] == HeldFlat || isFlat(k);
            unknowns[k] = held ? HeldFlat : free++;
            if (held) copy[k] = 0;
        }

        return new([.. Knots], copy, unknowns);
    }

    /// <summary>
    /// Moves the last knot along the last span's slope, so that the curve itself stays as it is: a length that changed the curve
    /// would be an unknown the fit does not know of, and slow it down. A value held flat stays, and then the curve does change.
    /// </summary>
    /// <param name="length">The new length.</param>
    /// <returns>Whether the curve is unchanged.</returns>
    public bool ExtendedTo(double length)
    {
        var (slope, more) = ((Values[^1] - Values[^2]) / (Knots[^1] - Knots[^2]), length - Length);
        Knots[^1] = length;
        if (Unknowns[^1] != HeldFlat) Values[^1] += slope * more;
        return slope == 0 || Unknowns[^1] != HeldFlat;
    }

    /// <summary>Curvature at an arc length.</summary>
    /// <param name="s">Arc length, from 0 to the length.</param>
    public double At(double s)
    {
        var m = 0;
        while (m < Knots.Length - 2 && s > Knots[m + 1]) m++;
        var share = (s - Knots[m]) / (Knots[m + 1] - Knots[m]);
        return Values[m] + (share * (Values[m + 1] - Values[m]));
    }
}
