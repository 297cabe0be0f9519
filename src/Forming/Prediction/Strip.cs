using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Forming.Prediction;

/// <summary>Shape and history of the panel as a strip of unit width.</summary>
/// <remarks>Nodes carry the direction; elements keep their length and turn evenly; places come by two Gauss points an element.</remarks>
internal sealed class Strip
{
    /// <summary>The share of an element at which its first Gauss point lies; the second lies as far from the other end.</summary>
    public const double LowShare = 0.21132486540518713; // 1/2 - 1/(2√3)

    private readonly MomentTable _table;
    private readonly double[] _most;
    private readonly double[] _mostMoment;
    private readonly double[] _middles;
    private readonly double[] _sines;
    private readonly double[] _cosines;

    /// <summary>Lays a strip out straight.</summary>
    /// <param name="lengths">[n] lengths of the elements [mm].</param>
    /// <param name="table">Moment against curvature.</param>
    /// <param name="start">Where it is clamped, heading along the x axis.</param>
    public Strip(double[] lengths, MomentTable table, Point start)
    {
        _table = table;
        var n = lengths.Length;
        Lengths = lengths;
        Along = new double[n + 1];
        Heading = new double[n + 1];
        Position = new Point[n + 1];
        Position[0] = start;
        (Sine, Cosine) = (new double[2 * n], new double[2 * n]);
        (Moment, Growth) = (new double[n], new double[n]);
        (_most, _mostMoment) = (new double[n], new double[n]);
        var whole = (n + Vector256<double>.Count - 1) / Vector256<double>.Count * Vector256<double>.Count;
        (_middles, _sines, _cosines) = (new double[whole], new double[whole], new double[whole]);
        for (var e = 0; e < n; e++)
            Along[e + 1] = Along[e] + lengths[e];
        Update();
    }

    /// <summary>[n] lengths of the elements [mm].</summary>
    public double[] Lengths { get; }

    /// <summary>[n + 1] distances of the nodes from the clamp [mm].</summary>
    public double[] Along { get; }

    /// <summary>[n + 1] directions at the nodes [rad]; the first is held.</summary>
    public double[] Heading { get; }

    /// <summary>[n + 1] places of the nodes [mm].</summary>
    public Point[] Position { get; }

    /// <summary>[2n] sines of the direction at the Gauss points.</summary>
    public double[] Sine { get; }

    /// <summary>[2n] cosines of the direction at the Gauss points.</summary>
    public double[] Cosine { get; }

    /// <summary>[n] moments [N·mm/mm].</summary>
    public double[] Moment { get; }

    /// <summary>[n] dM/dkappa [N·mm²/mm].</summary>
    public double[] Growth { get; }

    /// <summary>Curvature of an element [1/mm].</summary>
    /// <param name="e">Its number.</param>
    public double Curvature(int e) => (Heading[e + 1] - Heading[e]) / Lengths[e];

    /// <summary>Curvature left in an element when everything is let go [1/mm].</summary>
    /// <param name="e">Its number.</param>
    public double Released(int e) => _most[e] > _table.YieldCurvature ? _most[e] - (_mostMoment[e] / _table.Stiffness) : 0;

    /// <summary>Works out places and moments from the directions.</summary>
    public void Update()
    {
        for (var e = 0; e < Lengths.Length; e++)
            _middles[e] = (Heading[e] + Heading[e + 1]) / 2;
        var sinesOf = MemoryMarshal.Cast<double, Vector256<double>>(_sines.AsSpan());
        var cosinesOf = MemoryMarshal.Cast<double, Vector256<double>>(_cosines.AsSpan());
        var middlesOf = MemoryMarshal.Cast<double, Vector256<double>>(_middles.AsSpan());
        for (var i = 0; i < middlesOf.Length; i++)
        {
            var (sin, cos) = Vector256.SinCos(middlesOf[i]);
            sinesOf[i] = sin;
            cosinesOf[i] = cos;
        }

        for (var e = 0; e < Lengths.Length; e++)
        {
            var (h, turn) = (Lengths[e], Heading[e + 1] - Heading[e]);
            var (sin, cos) = (_sines[e], _cosines[e]);
            var (s, c) = SmallSinCos(turn * (0.5 - LowShare));
            (Sine[2 * e], Cosine[2 * e]) = ((sin * c) - (cos * s), (cos * c) + (sin * s));
            (Sine[(2 * e) + 1], Cosine[(2 * e) + 1]) = ((sin * c) + (cos * s), (cos * c) - (sin * s));
            Position[e + 1] = Position[e] + (h * c * new Point(cos, sin));
            var curvature = turn / h;
            if (curvature >= _most[e] && curvature > _table.YieldCurvature)
            {
                Moment[e] = _table.At(curvature, out Growth[e]);
            }
            else
            {
                // Also on the first, elastic stretch: there the largest moment is E'I times the largest curvature.
                Moment[e] = _mostMoment[e] - (_table.Stiffness * (_most[e] - curvature));
                Growth[e] = _table.Stiffness;
            }
        }
    }

    /// <summary>The same strip let go, with what each element has seen.</summary>
    public Strip LetGo()
    {
        var free = new Strip(Lengths, _table, Position[0]);
        _most.CopyTo(free._most, 0);
        _mostMoment.CopyTo(free._mostMoment, 0);
        for (var e = 0; e < Lengths.Length; e++)
            free.Heading[e + 1] = free.Heading[e] + (Released(e) * Lengths[e]);
        free.Update();
        return free;
    }

    /// <summary>Takes the elements before one for unloading, until they are next worked out.</summary>
    /// <param name="end">The first element that is not.</param>
    public void ExpectUnloading(int end)
    {
        for (var e = 0; e < end; e++)
            Growth[e] = _table.Stiffness;
    }

    /// <summary>Remembers what each element has seen so far.</summary>
    /// <returns>The first element that was bent further than ever before; as many as there are where none was.</returns>
    public int Commit()
    {
        var first = Lengths.Length;
        for (var e = 0; e < Lengths.Length; e++)
        {
            var curvature = Curvature(e);
            if (curvature > _most[e])
            {
                first = Math.Min(first, e);
                _most[e] = curvature;
                _mostMoment[e] = _table.At(curvature, out _);
            }
        }

        return first;
    }

    /// <summary>Where a place inside an element lies.</summary>
    /// <param name="e">The element.</param>
    /// <param name="inside">Distance from its first node [mm].</param>
    /// <param name="heading">Direction there [rad].</param>
    public Point PlaceIn(int e, double inside, out double heading)
    {
        var turn = Curvature(e) * inside;
        heading = Heading[e] + turn;
        return Position[e] + (inside * Math.Cos(turn * (0.5 - LowShare)) * Point.Along(Heading[e] + (turn / 2)));
    }

    private static (double Sin, double Cos) SmallSinCos(double x)
    {
        if (Math.Abs(x) > 0.1)
            return Math.SinCos(x);
        var q = x * x;
        return (
            x * (1 - (q / 6 * (1 - (q / 20 * (1 - (q / 42 * (1 - (q / 72)))))))),
            1 - (q / 2 * (1 - (q / 12 * (1 - (q / 30 * (1 - (q / 56 * (1 - (q / 90))))))))));
    }
}
