namespace Forming.Estimates;

/// <summary>How far a group of figures may lie off together.</summary>
/// <param name="Low">Low bound over the likely figure, 0 to 1.</param>
/// <param name="High">High bound over the likely figure, at least 1.</param>
public readonly record struct Spread(double Low, double High)
{
    /// <summary>A figure with its bounds.</summary>
    /// <param name="likely">The figure, at least 0.</param>
    public Band Around(double likely) => new(Low * likely, likely, High * likely);
}
