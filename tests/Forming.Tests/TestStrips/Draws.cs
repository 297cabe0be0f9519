using MathNet.Numerics.Distributions;

namespace Forming.Tests.TestStrips;

/// <summary>Random draws from fixed seeds, for coverage.</summary>
internal static class Draws
{
    public const int Count = 500;

    /// <summary>Half-width over standard deviation at 95 %.</summary>
    public const double Half = 1.959963984540054;

    /// <summary>Share of the draws in which a claim holds.</summary>
    public static double Share(int seed, Func<Random, bool> holds)
    {
        var random = new Random(seed);
        return Enumerable.Range(0, Count).Count(_ => holds(random)) / (double)Count;
    }

    /// <summary>A share is 95 % within three standard errors of 500 draws.</summary>
    public static void AssertNominal(double share) => Assert.InRange(share, 0.92, 0.98);

    public static double Normal(Random random, double deviation) => MathNet.Numerics.Distributions.Normal.Sample(random, 0, deviation);

    /// <summary>Two-sided quantile of Student's t at 95 %.</summary>
    public static double Student(int degreesOfFreedom) => StudentT.InvCDF(0, 1, degreesOfFreedom, 0.975);
}
