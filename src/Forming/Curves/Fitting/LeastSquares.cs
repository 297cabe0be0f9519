namespace Forming.Curves.Fitting;

/// <summary>
/// Linear least squares by Householder reflections. MathNet's QR would do the same, but its matrices and its parallel
/// dispatch cost more than the arithmetic of the small systems here, some twenty rows by five, solved tens of times a fit.
/// </summary>
internal static class LeastSquares
{
    /// <summary>A column that keeps less than this share of its length past the earlier ones is taken as dependent on them.</summary>
    private const double Dependent = 1e-12;

    /// <summary>The x that makes |A x - b| smallest; 0 for a column that depends on the earlier ones.</summary>
    /// <param name="columns">[columns × rows] A, column after column; overwritten.</param>
    /// <param name="right">[rows] b; overwritten.</param>
    /// <param name="solution">[columns] receives x.</param>
    public static void Solve(Span<double> columns, Span<double> right, Span<double> solution)
    {
        var rows = right.Length;
        Span<double> diagonal = stackalloc double[solution.Length];
        for (var k = 0; k < solution.Length; k++)
        {
            var column = columns.Slice(k * rows, rows);
            diagonal[k] = k < rows ? Reflector(column, k) : 0;
            if (diagonal[k] == 0) continue;
            var mirror = column[k..];
            for (var later = k + 1; later < solution.Length; later++)
                Reflect(mirror, columns.Slice((later * rows) + k, rows - k));
            Reflect(mirror, right[k..]);
        }

        for (var k = solution.Length - 1; k >= 0; k--)
        {
            solution[k] = 0;
            if (diagonal[k] == 0) continue;
            var sum = right[k];
            for (var later = k + 1; later < solution.Length; later++)
                sum -= columns[(later * rows) + k] * solution[later];
            solution[k] = sum / diagonal[k];
        }
    }

    /// <summary>Turns the column's tail into the mirror that zeroes it, scaled to v·v = 2; returns R's diagonal entry.</summary>
    private static double Reflector(Span<double> column, int k)
    {
        var tail = Square(column[k..]);
        if (tail <= Dependent * Dependent * (tail + Square(column[..k]))) return 0;
        var length = column[k] > 0 ? -Math.Sqrt(tail) : Math.Sqrt(tail);
        column[k] -= length;
        var scale = 1 / Math.Sqrt(-length * column[k]);
        foreach (ref var entry in column[k..]) entry *= scale;
        return length;
    }

    private static void Reflect(ReadOnlySpan<double> mirror, Span<double> vector)
    {
        var dot = 0.0;
        for (var i = 0; i < mirror.Length; i++) dot += mirror[i] * vector[i];
        for (var i = 0; i < mirror.Length; i++) vector[i] -= dot * mirror[i];
    }

    private static double Square(ReadOnlySpan<double> vector)
    {
        var sum = 0.0;
        foreach (var entry in vector) sum += entry * entry;
        return sum;
    }
}
