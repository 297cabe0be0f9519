namespace Forming.Learning;

/// <summary>What is known of a sheet, and what was read on pieces of it.</summary>
public sealed record YieldQuestion
{
    /// <summary>Standard deviation of ln(yield factor) before any reading: <see cref="SheetPrior.Effective"/>, &gt; 0.</summary>
    public required double PriorDeviation { get; init; }

    /// <summary>Standard deviation of ln(n/nominal n) before any reading; 0 keeps n.</summary>
    public double HardeningDeviation { get; init; }

    /// <summary>
    /// What more yield springs what is wanted as a larger n does: what is learnt is then the yield factor that with the nominal n springs
    /// alike. None learns the factor itself.
    /// </summary>
    public HardeningTrade HardeningTrade { get; init; }

    /// <summary>The readings; none leaves the prior.</summary>
    public required IReadOnlyList<YieldReading> Readings { get; init; }

    /// <summary>
    /// Errors that several readings share, such as a fold's angle: what one standard deviation of each adds to every reading, in the
    /// reading's unit. Independent of each other.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<double>> SharedErrors { get; init; } = [];
}

/// <summary>How much ln(yield factor) does what ln(n/nominal n) does.</summary>
/// <param name="Slope">Of the first order.</param>
/// <param name="Bend">Of the second order.</param>
public readonly record struct HardeningTrade(double Slope, double Bend)
{
    // Where the parabola is exact, in ln(n).
    private const double Reach = 0.2;

    private const double Most = 1;

    /// <summary>ln(yield factor) that does what a change of n does.</summary>
    /// <param name="lnHardening">ln(n/nominal n).</param>
    public double At(double lnHardening) => lnHardening * (Slope + (Bend * lnHardening));

    /// <summary>The trade of what is wanted.</summary>
    /// <param name="wanted">What is wanted by ln(yield factor) and ln(n/nominal n): finite at 0, growing with the yield.</param>
    /// <returns>None where it does not depend on the yield.</returns>
    public static HardeningTrade Of(Func<double, double, double> wanted)
    {
        double more = AlikeTo(Reach), less = AlikeTo(-Reach);
        return Math.Max(Math.Abs(more), Math.Abs(less)) < Most
            ? new((more - less) / (2 * Reach), (more + less) / (2 * Reach * Reach))
            : default;

        double AlikeTo(double lnHardening)
        {
            var as0 = wanted(0, 0);
            return -Bisection.Solve(at => wanted(at, lnHardening) - as0, -2 * Most, 2 * Most);
        }
    }
}

/// <summary>One reading and what a sheet would show there.</summary>
/// <param name="Observed">What was read, in a unit in which errors are normal: the logarithm of a radius, an angle [rad], a place [mm].</param>
/// <param name="Deviation">Standard deviation of its error, in the same unit, &gt; 0.</param>
/// <param name="Predicted">
/// What a sheet shows by ln(yield factor) and ln(n/nominal n), in the same unit; may be infinite where nothing of the bend stays.
/// </param>
public sealed record YieldReading(double Observed, double Deviation, Func<double, double, double> Predicted);
