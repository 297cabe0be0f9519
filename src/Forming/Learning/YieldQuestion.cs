namespace Forming.Learning;

/// <summary>What is known of a sheet, and what was read on pieces of it.</summary>
public sealed record YieldQuestion
{
    /// <summary>Standard deviation of ln(yield factor) before any reading: <see cref="SheetPrior.Effective"/>, &gt; 0.</summary>
    public required double PriorDeviation { get; init; }

    /// <summary>Standard deviation of ln(n/nominal n) before any reading; 0 keeps n.</summary>
    public double HardeningDeviation { get; init; }

    /// <summary>
    /// How much more yield, in ln(factor), makes what is wanted spring as a larger n does, per ln(n): what is learnt is then the yield
    /// factor that with the nominal n springs alike. 0 learns the factor itself.
    /// </summary>
    public double HardeningTrade { get; init; }

    /// <summary>The readings; none leaves the prior.</summary>
    public required IReadOnlyList<YieldReading> Readings { get; init; }

    /// <summary>
    /// Errors that several readings share, such as a fold's angle: what one standard deviation of each adds to every reading, in the
    /// reading's unit. Independent of each other.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<double>> SharedErrors { get; init; } = [];

    private const double TradeStep = 0.02;

    /// <summary><see cref="HardeningTrade"/> of what is wanted.</summary>
    /// <param name="wanted">What is wanted by ln(yield factor) and ln(n/nominal n), finite about 0.</param>
    /// <returns>0 where it does not depend on the yield.</returns>
    public static double TradeOf(Func<double, double, double> wanted)
    {
        var byYield = wanted(TradeStep, 0) - wanted(-TradeStep, 0);
        var trade = (wanted(0, TradeStep) - wanted(0, -TradeStep)) / byYield;
        return double.IsFinite(trade) ? trade : 0;
    }
}

/// <summary>One reading and what a sheet would show there.</summary>
/// <param name="Observed">What was read, in a unit in which errors are normal: the logarithm of a radius, an angle [rad], a place [mm].</param>
/// <param name="Deviation">Standard deviation of its own error, in the same unit, &gt; 0.</param>
/// <param name="Predicted">
/// What a sheet shows by ln(yield factor) and ln(n/nominal n), in the same unit; may be infinite where nothing of the bend stays.
/// </param>
public sealed record YieldReading(double Observed, double Deviation, Func<double, double, double> Predicted);
