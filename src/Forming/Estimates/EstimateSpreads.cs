namespace Forming.Estimates;

/// <summary>How far each group of figures may lie off. Within a group, and from group to group, all move together.</summary>
public sealed record EstimateSpreads
{
    /// <summary>What stands where a caller says nothing: assumptions.</summary>
    public static EstimateSpreads Default { get; } = new();

    /// <summary>Time to build the form.</summary>
    public Spread Form { get; init; } = new(0.7, 1.5);

    /// <summary>Time of a panel.</summary>
    public Spread Panel { get; init; } = new(0.8, 1.3);

    /// <summary>Price of sheet.</summary>
    public Spread Material { get; init; } = new(0.9, 1.2);
}
