namespace Forming.Estimates;

/// <summary>A value with its low and high bounds, all in one unit.</summary>
/// <param name="Low">Low bound, at most <see cref="Likely"/>.</param>
/// <param name="Likely">The likely value.</param>
/// <param name="High">High bound, at least <see cref="Likely"/>.</param>
public readonly record struct Band(double Low, double Likely, double High)
{
    /// <summary>Sum, bound by bound: all parts move together.</summary>
    /// <param name="a">First value.</param>
    /// <param name="b">Second value.</param>
    public static Band operator +(Band a, Band b) => new(a.Low + b.Low, a.Likely + b.Likely, a.High + b.High);

    /// <summary>A value taken a number of times.</summary>
    /// <param name="factor">How often, at least 0.</param>
    /// <param name="a">The value.</param>
    public static Band operator *(double factor, Band a) => new(factor * a.Low, factor * a.Likely, factor * a.High);

    /// <summary>Sum of many values.</summary>
    /// <param name="bands">The values.</param>
    public static Band Sum(IEnumerable<Band> bands) => bands.Aggregate(default(Band), static (sum, band) => sum + band);
}

/// <summary>How far a group of values may be out together.</summary>
/// <param name="Low">Low bound over the likely value, 0 to 1.</param>
/// <param name="High">High bound over the likely value, at least 1.</param>
public readonly record struct Spread(double Low, double High)
{
    /// <summary>A value with its bounds.</summary>
    /// <param name="likely">The value, at least 0.</param>
    public Band Around(double likely) => new(Low * likely, likely, High * likely);
}

/// <summary>How far each group of values may be out. Within a group, and from group to group, all move together.</summary>
public sealed record EstimateSpreads
{
    /// <summary>What is used where a caller says nothing: assumptions.</summary>
    public static EstimateSpreads Default { get; } = new();

    /// <summary>Time to build the form.</summary>
    public Spread Form { get; init; } = new(0.7, 1.5);

    /// <summary>Time of a panel.</summary>
    public Spread Panel { get; init; } = new(0.8, 1.3);

    /// <summary>Price of sheet.</summary>
    public Spread Material { get; init; } = new(0.9, 1.2);
}
