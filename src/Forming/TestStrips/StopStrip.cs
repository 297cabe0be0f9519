namespace Forming.TestStrips;

/// <summary>A strip folded against the stop.</summary>
/// <param name="StopAngle">What the stop was set to: the angle under load.</param>
/// <param name="FoldAngle">What was measured after letting go: the turned angle, 0 = flat.</param>
public readonly record struct StopStrip(Angle StopAngle, Angle FoldAngle);
