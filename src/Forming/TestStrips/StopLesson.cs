using Forming.Folds;

namespace Forming.TestStrips;

/// <summary>What strips taught about the stop.</summary>
/// <param name="Line">The line for the next form.</param>
/// <param name="Offset">Its offset [rad] with its interval.</param>
/// <param name="Slope">Its slope with its interval.</param>
/// <param name="Fit">The line as it was fitted: measured angle [rad] on stop angle [rad].</param>
/// <param name="Settings">Stop angles for the wanted fold angles.</param>
public sealed record StopLesson(StopLine Line, Interval Offset, Interval Slope, StraightLine Fit, IReadOnlyList<StopAdvice> Settings) : StripLesson;
