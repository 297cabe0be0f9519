namespace Forming.Programs;

/// <summary>Steps in a row that share one setting of the stop.</summary>
/// <param name="StopAngle">The setting, rounded to the stop.</param>
/// <param name="Steps">Numbers of the steps.</param>
public sealed record StopGroup(Angle StopAngle, IReadOnlyList<int> Steps);
