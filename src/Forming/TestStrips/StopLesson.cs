using Forming.Folds;
using Forming.Learning;

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

/// <summary>A strip folded against the stop.</summary>
/// <param name="StopAngle">What the stop was set to: the angle under load.</param>
/// <param name="FoldAngle">What was measured after letting go: the turned angle, 0 = flat.</param>
public readonly record struct StopStrip(Angle StopAngle, Angle FoldAngle);

/// <summary>The stop to set for a wanted fold angle.</summary>
/// <param name="FoldAngle">The wanted fold angle.</param>
/// <param name="StopAngle">The stop angle for it [rad], by Fieller's theorem.</param>
/// <param name="Set">The same on the stop's own steps.</param>
/// <param name="Expected">Angle that the next strip at that setting may have [rad].</param>
public sealed record StopAdvice(Angle FoldAngle, Interval StopAngle, Angle Set, Interval Expected);

/// <summary>What strips taught about the stop.</summary>
/// <param name="Line">The line for the next form.</param>
/// <param name="Offset">Its offset [rad] with its interval.</param>
/// <param name="Slope">Its slope with its interval.</param>
/// <param name="Fit">The line as it was fitted: measured angle [rad] on stop angle [rad].</param>
/// <param name="Settings">Stop angles for the wanted fold angles.</param>
public sealed record StopLesson(
    StopLine Line, Interval Offset, Interval Slope, StraightLine Fit, IReadOnlyList<StopAdvice> Settings) : StripLesson;
