namespace Forming.Folds;

/// <summary>What test strips taught: stop angle = offset + slope × fold angle.</summary>
/// <param name="Offset">Stop angle at a fold of zero.</param>
/// <param name="Slope">Growth of the stop angle with the fold angle, dimensionless, &gt; 0.</param>
public sealed record StopLine(Angle Offset, double Slope);
