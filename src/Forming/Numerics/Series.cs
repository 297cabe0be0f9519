namespace Forming.Numerics;

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
