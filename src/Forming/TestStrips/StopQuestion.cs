namespace Forming.TestStrips;

/// <summary>What is asked of strips folded against the stop.</summary>
public sealed record StopQuestion
{
    /// <summary>The strips, at least one.</summary>
    public required IReadOnlyList<StopStrip> Strips { get; init; }

    /// <summary>95 % of measured angles lie within this of the true one, &gt; 0.</summary>
    public Angle ReadingError { get; init; } = Angle.FromDegrees(0.5);

    /// <summary>Growth of the stop angle with the fold angle where all strips were folded at one stop, &gt; 0.</summary>
    public double AssumedSlope { get; init; } = 1;

    /// <summary>How far the assumed slope may be out, at 95 %.</summary>
    public double SlopeError { get; init; } = 0.1;

    /// <summary>Fold angles a stop is wanted for; empty takes the smallest and the largest measured.</summary>
    public IReadOnlyList<Angle> Targets { get; init; } = [];

    /// <summary>The stop's smallest step, or null where it has none.</summary>
    public Angle? Resolution { get; init; }
}
