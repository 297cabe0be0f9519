using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Forming.Prediction;

/// <summary>One tridiagonal matrix with several right-hand sides, and the small dense system on its border.</summary>
internal sealed class BorderedSystem(int rows)
{
    private double[] _columns = new double[rows * 8];
    private double[] _factors = new double[rows];
    private double[] _dense = [];

    /// <summary>[rows] main diagonal.</summary>
    public double[] Diagonal { get; } = new double[rows];

    /// <summary>[rows] below and above it: [i] couples i and i + 1.</summary>
    public double[] Beside { get; } = new double[rows];

    /// <summary>Right-hand sides a row, filled up with zeros to whole vectors.</summary>
    public int Width { get; private set; }

    /// <summary>The right-hand sides, row by row; then the solutions.</summary>
    public Span<double> Columns => _columns.AsSpan(0, rows * Width);

    private Span<Vector256<double>> Vectors => MemoryMarshal.Cast<double, Vector256<double>>(Columns);

    /// <summary>Clears everything for a number of right-hand sides.</summary>
    /// <param name="count">The number.</param>
    public void Begin(int count)
    {
        Width = Whole(count);
        if (_columns.Length < rows * Width)
            _columns = new double[rows * Width];
        Columns.Clear();
        Array.Clear(Diagonal);
        Array.Clear(Beside);
    }

    /// <summary>Solves the tridiagonal system for all right-hand sides at once.</summary>
    /// <returns>Whether every pivot was usable.</returns>
    public bool Solve()
    {
        var x = Vectors;
        var wide = Width / Vector256<double>.Count;
        for (var i = 0; i < rows; i++)
        {
            var pivot = Diagonal[i];
            var own = x.Slice(i * wide, wide);
            if (i > 0)
            {
                var beside = Beside[i - 1];
                pivot -= beside * _factors[i - 1];
                var above = x.Slice((i - 1) * wide, wide);
                for (var c = 0; c < own.Length; c++)
                    own[c] -= beside * above[c];
            }

            if (pivot == 0 || !double.IsFinite(pivot))
                return false;
            var scale = 1 / pivot;
            _factors[i] = Beside[i] * scale;
            for (var c = 0; c < own.Length; c++)
                own[c] *= scale;
        }

        for (var i = rows - 2; i >= 0; i--)
        {
            var factor = _factors[i];
            var own = x.Slice(i * wide, wide);
            var below = x.Slice((i + 1) * wide, wide);
            for (var c = 0; c < own.Length; c++)
                own[c] -= factor * below[c];
        }

        return true;
    }

    /// <summary>Products of the solutions' columns with a row.</summary>
    /// <param name="row">[rows] the row.</param>
    /// <param name="sums">[count] where to.</param>
    public void Multiply(ReadOnlySpan<double> row, Span<double> sums)
    {
        var x = Vectors;
        var wide = Width / Vector256<double>.Count;
        for (var c = 0; c < wide; c++)
        {
            var sum = Vector256<double>.Zero;
            for (var i = 0; i < row.Length; i++)
                sum += row[i] * x[(i * wide) + c];
            for (var k = 0; k < Vector256<double>.Count && (c * Vector256<double>.Count) + k < sums.Length; k++)
                sums[(c * Vector256<double>.Count) + k] = sum[k];
        }
    }

    /// <summary>A cleared dense matrix with its right-hand side as the last column, row by row.</summary>
    /// <param name="size">Number of unknowns.</param>
    public Span<double> Dense(int size)
    {
        var length = size * (size + 1);
        if (_dense.Length < length)
            _dense = new double[length];
        _dense.AsSpan(0, length).Clear();
        return _dense.AsSpan(0, length);
    }

    private static int Whole(int count) =>
        (count + Vector256<double>.Count - 1) / Vector256<double>.Count * Vector256<double>.Count;

    /// <summary>Solves a dense system in place; the solution replaces the last column.</summary>
    /// <param name="a">[size × (size + 1)] matrix and right-hand side.</param>
    /// <param name="size">Number of unknowns.</param>
    public static bool SolveDense(Span<double> a, int size)
    {
        var wide = size + 1;
        for (var k = 0; k < size; k++)
        {
            var best = k;
            for (var i = k + 1; i < size; i++)
            {
                if (Math.Abs(a[(i * wide) + k]) > Math.Abs(a[(best * wide) + k]))
                    best = i;
            }

            var pivot = a[(best * wide) + k];
            if (pivot == 0 || !double.IsFinite(pivot))
                return false;
            if (best != k)
            {
                for (var c = k; c < wide; c++)
                    (a[(k * wide) + c], a[(best * wide) + c]) = (a[(best * wide) + c], a[(k * wide) + c]);
            }

            for (var i = 0; i < size; i++)
            {
                var factor = i == k ? 0 : a[(i * wide) + k] / pivot;
                if (factor == 0)
                    continue;
                for (var c = k; c < wide; c++)
                    a[(i * wide) + c] -= factor * a[(k * wide) + c];
            }
        }

        for (var k = 0; k < size; k++)
            a[(k * wide) + size] /= a[(k * wide) + k];
        return true;
    }
}
