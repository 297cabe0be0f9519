namespace Forming.Estimates;

/// <summary>A figure with its low and high bounds, all in one unit.</summary>
/// <param name="Low">Low bound, at most <see cref="Likely"/>.</param>
/// <param name="Likely">The figure itself.</param>
/// <param name="High">High bound, at least <see cref="Likely"/>.</param>
public readonly record struct Band(double Low, double Likely, double High)
{
    /// <summary>Sum, bound by bound: all parts move together.</summary>
    /// <param name="a">First figure.</param>
    /// <param name="b">Second figure.</param>
    public static Band operator +(Band a, Band b) => new(a.Low + b.Low, a.Likely + b.Likely, a.High + b.High);

    /// <summary>A figure taken a number of times.</summary>
    /// <param name="factor">How often, at least 0.</param>
    /// <param name="a">The figure.</param>
    public static Band operator *(double factor, Band a) => new(factor * a.Low, factor * a.Likely, factor * a.High);

    /// <summary>Sum of many figures.</summary>
    /// <param name="bands">The figures.</param>
    public static Band Sum(IEnumerable<Band> bands) => bands.Aggregate(default(Band), static (sum, band) => sum + band);
}
