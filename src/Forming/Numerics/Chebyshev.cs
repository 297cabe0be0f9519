namespace Forming.Numerics;

/// <summary>Chebyshev series of a smooth function on 0 to 1.</summary>
/// <remarks>
/// MathNet has quadrature rules and splines but no series that can be integrated once and then evaluated anywhere to full
/// precision, which placing folds needs hundreds of times a plan.
/// </remarks>
internal static class Chebyshev
{
    /// <summary>The n + 1 extreme points, from 1 down to 0.</summary>
    /// <param name="n">Degree, &gt; 0.</param>
    public static double[] Nodes(int n)
    {
        var nodes = new double[n + 1];
        for (var j = 0; j <= n; j++)
            nodes[j] = (1 + Math.Cos(Math.PI * j / n)) / 2;
        return nodes;
    }

    /// <summary>Coefficients of the polynomial through values at the nodes.</summary>
    /// <param name="values">[n + 1] values, in the order of <see cref="Nodes"/>.</param>
    /// <param name="isResolved">Whether the last coefficients are nothing against the largest.</param>
    /// <param name="tolerance">What counts as nothing.</param>
    /// <returns>[n + 1] coefficients.</returns>
    public static double[] Fit(double[] values, out bool isResolved, double tolerance)
    {
        var n = values.Length - 1;
        var cosines = Cosines(n);
        var coefficients = new double[n + 1];
        var largest = 0.0;
        for (var k = 0; k <= n; k++)
        {
            var sum = (values[0] + (k % 2 == 0 ? values[n] : -values[n])) / 2;
            for (var j = 1; j < n; j++)
                sum += values[j] * cosines[j * k % (2 * n)];
            coefficients[k] = sum * (k == 0 || k == n ? 1 : 2) / n;
            largest = Math.Max(largest, Math.Abs(coefficients[k]));
        }

        var last = Math.Max(Math.Abs(coefficients[n]), Math.Max(Math.Abs(coefficients[n - 1]), Math.Abs(coefficients[n - 2])));
        isResolved = last <= tolerance * largest;
        return coefficients;
    }

    /// <summary>The integral from 0.</summary>
    /// <param name="coefficients">[n + 1] coefficients of the integrand.</param>
    /// <returns>[n + 2] coefficients.</returns>
    public static double[] Integrate(double[] coefficients)
    {
        var n = coefficients.Length - 1;
        var integral = new double[n + 2];
        var atStart = 0.0;
        for (var k = 1; k <= n + 1; k++)
        {
            var before = (k == 1 ? 2 : 1) * coefficients[k - 1];
            var after = k + 1 <= n ? coefficients[k + 1] : 0;
            integral[k] = (before - after) / (4 * k);
            atStart += k % 2 == 0 ? integral[k] : -integral[k];
        }

        integral[0] = -atStart;
        return integral;
    }

    /// <summary>The value of a series.</summary>
    /// <param name="coefficients">Its coefficients.</param>
    /// <param name="u">Where, 0 to 1.</param>
    public static double Evaluate(double[] coefficients, double u)
    {
        var x = (2 * u) - 1;
        double b1 = 0, b2 = 0;
        for (var k = coefficients.Length - 1; k > 0; k--)
            (b1, b2) = (coefficients[k] + (2 * x * b1) - b2, b1);
        return coefficients[0] + (x * b1) - b2;
    }

    private static double[] Cosines(int n)
    {
        var cosines = new double[2 * n];
        for (var i = 0; i < cosines.Length; i++)
            cosines[i] = Math.Cos(Math.PI * i / n);
        return cosines;
    }
}

/// <summary>A smooth function on an interval as a Chebyshev series.</summary>
/// <param name="Coefficients">Its coefficients.</param>
/// <param name="Length">Length of the interval, which begins at 0.</param>
internal sealed record Series(double[] Coefficients, double Length)
{
    /// <summary>The value.</summary>
    /// <param name="at">Where, 0 to the length of the interval.</param>
    public double At(double at) => Chebyshev.Evaluate(Coefficients, at / Length);

    /// <summary>The integral from 0.</summary>
    public Series Integral()
    {
        var integral = Chebyshev.Integrate(Coefficients);
        for (var k = 0; k < integral.Length; k++)
            integral[k] *= Length;
        return new(integral, Length);
    }
}
