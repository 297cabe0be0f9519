namespace Forming.TestStrips;

/// <summary>The stop to set for a wanted fold angle.</summary>
/// <param name="FoldAngle">The wanted fold angle.</param>
/// <param name="StopAngle">The stop angle for it [rad], by Fieller's theorem.</param>
/// <param name="Set">The same on the stop's own steps.</param>
/// <param name="Expected">Where the next strip folded at that setting may come out [rad].</param>
public sealed record StopAdvice(Angle FoldAngle, Interval StopAngle, Angle Set, Interval Expected);
