using Forming.Springback;
using MathNet.Numerics.RootFinding;

namespace Forming.Tapers;

/// <summary>How much faster the normal turns on the form, so that the released moments balance along one ruling.</summary>
/// <remarks>
/// An unstretched panel has one sweep, not two. Least elastic energy over all shapes with these rulings asks
/// <c>g - (1/E'I) ∫ r M(g/r) dx = 1</c>, <c>r = r0 (r1/r0)^x</c>, x even from 0 to 1.
/// </remarks>
internal static class RulingBalance
{
    // Five-point Gauss-Legendre on 0 to 1.
    private static readonly double[] Points =
        [0.0469100770306680, 0.2307653449471584, 0.5, 0.7692346550528416, 0.9530899229693320];

    private static readonly double[] Weights =
        [0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945];

    /// <summary>The factor g of one ruling.</summary>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="nearRadius">r0 [mm].</param>
    /// <param name="farRadius">r1 [mm].</param>
    public static double Factor(BendingLaw law, double nearRadius, double farRadius)
    {
        var most = 2.0;
        while (Excess(most) < 0)
            most *= 2;
        return RobustNewtonRaphson.FindRoot(Excess, Slope, 1, most, accuracy: 1e-13 * most);

        double Excess(double g) =>
            g - 1 - Mean(r => r * law.At(g / r).MomentPerWidth / law.Stiffness, nearRadius, farRadius);

        double Slope(double g) => 1 - Mean(r => law.At(g / r).TangentStiffness / law.Stiffness, nearRadius, farRadius);
    }

    /// <summary>How much tighter, or opener if negative, a narrow strip cut free at one end would spring.</summary>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="factor">g of the ruling.</param>
    /// <param name="radius">r at the end [mm].</param>
    public static double EndBias(BendingLaw law, double factor, double radius) =>
        factor - (radius * law.At(factor / radius).MomentPerWidth / law.Stiffness) - 1;

    /// <summary>Mean of a function of the bending radius along a ruling.</summary>
    /// <param name="function">The function.</param>
    /// <param name="nearRadius">r0 [mm].</param>
    /// <param name="farRadius">r1 [mm].</param>
    public static double Mean(Func<double, double> function, double nearRadius, double farRadius)
    {
        var sum = 0.0;
        for (var i = 0; i < Points.Length; i++)
            sum += Weights[i] * function(nearRadius * Math.Pow(farRadius / nearRadius, Points[i]));
        return sum;
    }
}
