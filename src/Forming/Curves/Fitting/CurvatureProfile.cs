namespace Forming.Curves.Fitting;

/// <summary>Curvature as a broken line over arc length, knots with values, and which unknown of a fit moves which value.</summary>
/// <param name="knots">[m ≥ 2] arc lengths, rising from 0; the last is the curve's length.</param>
/// <param name="values">[m] curvature at the knots.</param>
/// <param name="unknowns">[m] index of the unknown that a value follows; knots may share one, <see cref="HeldFlat"/> = held at 0.</param>
/// <param name="movers">[m] which mover carries a knot along; knots may share one, <see cref="Still"/> = it stays; null = all stay.</param>
internal sealed class CurvatureProfile(double[] knots, double[] values, int[] unknowns, int[]? movers = null)
{
    /// <summary>Stands for no unknown: the value is held at 0.</summary>
    public const int HeldFlat = -1;

    /// <summary>Stands for no mover: the knot stays where it is.</summary>
    public const int Still = -1;

    private readonly int[]? _movers = movers;

    private readonly int _valueCount = unknowns.Max() + 1;

    /// <summary>Arc lengths of the knots.</summary>
    public double[] Knots { get; } = knots;

    /// <summary>Curvature at the knots.</summary>
    public double[] Values { get; } = values;

    /// <summary>Index of the unknown that each value follows.</summary>
    public int[] Unknowns { get; } = unknowns;

    /// <summary>How many curvatures and places of knots a fit may choose.</summary>
    public int UnknownCount { get; } = unknowns.Max() + 1 + (movers is null ? 0 : movers.Max() + 1);

    /// <summary>Length of the curve.</summary>
    public double Length => Knots[^1];

    /// <summary>The largest curvature of either sign.</summary>
    public double Peak => Values.Max(Math.Abs);

    /// <summary>Whether a part of it is held flat.</summary>
    public bool HasFlat => Unknowns.Contains(HeldFlat);

    /// <summary>One curvature from end to end: an arc.</summary>
    /// <param name="length">Length of the curve.</param>
    /// <param name="curvature">Its curvature.</param>
    public static CurvatureProfile Arc(double length, double curvature) => new([0, length], [curvature, curvature], [0, 0]);

    /// <summary>A free curvature at each knot.</summary>
    /// <param name="knots">[m ≥ 2] arc lengths, rising from 0.</param>
    /// <param name="values">[m] curvature at the knots.</param>
    public static CurvatureProfile Free(double[] knots, double[] values) => new(knots, values, [.. Enumerable.Range(0, knots.Length)]);

    /// <summary>Pieces of one curvature each, with a short ramp from one to the next whose place is free.</summary>
    /// <param name="length">Length of the curve.</param>
    /// <param name="corners">[pieces - 1] middles of the ramps, rising.</param>
    /// <param name="values">[pieces] curvatures.</param>
    /// <param name="isFlat">[pieces] which of them are held flat.</param>
    /// <param name="ramp">Length of a ramp.</param>
    /// <param name="areRampsFree">Whether a ramp's two ends move apart, or together.</param>
    public static CurvatureProfile Chain(double length, double[] corners, double[] values, bool[] isFlat, double ramp, bool areRampsFree)
    {
        var count = 2 * values.Length;
        var (knots, ends, unknowns, movers) = (new double[count], new double[count], new int[count], new int[count]);
        var free = 0;
        for (var k = 0; k < count; k++)
        {
            var piece = k / 2;
            var isStart = k % 2 == 0;
            if (isStart && !isFlat[piece]) free++;
            (ends[k], unknowns[k]) = isFlat[piece] ? (0, HeldFlat) : (values[piece], free - 1);
            var corner = isStart ? piece - 1 : piece;
            var isEnd = k == 0 || k == count - 1;
            knots[k] = k == 0 ? 0 : isEnd ? length : corners[corner] + (isStart ? ramp / 2 : -ramp / 2);
            movers[k] = isEnd ? Still : areRampsFree ? k - 1 : corner;
        }

        return new(knots, ends, unknowns, movers);
    }

    /// <summary>Index of the unknown that moves a knot, after those of the values; negative when it stays.</summary>
    /// <param name="knot">Which knot.</param>
    public int MoverOf(int knot) => _movers is null || _movers[knot] == Still ? Still : _valueCount + _movers[knot];

    /// <summary>A copy with each unknown changed by a share of a step.</summary>
    /// <param name="share">The share.</param>
    /// <param name="step">The step: unknown u by entry u + <paramref name="first"/>.</param>
    /// <param name="first">Entry of the first unknown.</param>
    public CurvatureProfile Changed(double share, double[] step, int first)
    {
        var changed = Copy();
        for (var k = 0; k < Values.Length; k++)
        {
            if (Unknowns[k] >= 0) changed.Values[k] += share * step[first + Unknowns[k]];
            if (MoverOf(k) is >= 0 and var mover) changed.Knots[k] += share * step[first + mover];
        }

        return changed;
    }

    /// <summary>Whether the knots follow each other, no two nearer than this.</summary>
    /// <param name="least">The least distance.</param>
    public bool IsInOrder(double least)
    {
        for (var k = 1; k < Knots.Length; k++)
            if (!(Knots[k] - Knots[k - 1] > least)) return false;
        return true;
    }

    /// <summary>A copy that can be changed without touching this one.</summary>
    public CurvatureProfile Copy() => new([.. Knots], [.. Values], Unknowns, _movers);

    /// <summary>The same curvature carried over to other knots, each value free.</summary>
    /// <param name="knots">[m ≥ 2] arc lengths, rising from 0 to this length.</param>
    public CurvatureProfile On(double[] knots) => Free(knots, Array.ConvertAll(knots, At));

    /// <summary>A copy in which some knots are held at no curvature.</summary>
    /// <param name="isFlat">Whether the knot with this index is to be held, beside those already held.</param>
    public CurvatureProfile Flattened(Func<int, bool> isFlat)
    {
        var copy = Values.ToArray();
        var unknowns = new int[copy.Length];
        var numbers = new Dictionary<int, int>();
        for (var k = 0; k < copy.Length; k++)
        {
            var held = Unknowns[k] == HeldFlat || isFlat(k);
            if (!held) numbers.TryAdd(Unknowns[k], numbers.Count);
            unknowns[k] = held ? HeldFlat : numbers[Unknowns[k]];
            if (held) copy[k] = 0;
        }

        return new([.. Knots], copy, unknowns, _movers);
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

/// <summary>A stretch of curve whose curvature is linear in arc length: a flat, an arc or a piece of clothoid.</summary>
/// <param name="LengthMm">Arc length [mm], &gt; 0.</param>
/// <param name="StartCurvature">Curvature where the piece begins [1/mm], at least 0.</param>
/// <param name="EndCurvature">Curvature where the piece ends [1/mm], at least 0; both 0 = flat.</param>
public readonly record struct CurvaturePiece(double LengthMm, double StartCurvature, double EndCurvature)
{
    /// <summary>Whether the piece does not bend at all.</summary>
    public bool IsFlat => StartCurvature == 0 && EndCurvature == 0;
}
