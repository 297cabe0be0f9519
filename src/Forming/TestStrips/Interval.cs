namespace Forming.TestStrips;

/// <summary>A figure that strips taught, and how far they leave it open.</summary>
/// <param name="Value">The best value, in the unit of the figure.</param>
/// <param name="Low">Lower end at <see cref="Margin.Confidence"/>, or null where the strips set none.</param>
/// <param name="High">Upper end at <see cref="Margin.Confidence"/>, or null where the strips set none.</param>
public readonly record struct Interval(double Value, double? Low, double? High)
{
    /// <summary>The figure with a half-width on both sides.</summary>
    /// <param name="value">The best value.</param>
    /// <param name="half">The half-width, at least 0.</param>
    public static Interval Around(double value, double half) => new(value, value - half, value + half);

    /// <summary>Whether a value lies within.</summary>
    /// <param name="value">The value.</param>
    public bool Holds(double value) => !(value < Low) && !(value > High);
}
