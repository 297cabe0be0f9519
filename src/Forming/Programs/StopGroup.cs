namespace Forming.Programs;

/// <summary>Steps in a row that share one setting of the stop.</summary>
/// <param name="Setting">What the stop is set to, a whole number of its steps.</param>
/// <param name="Steps">Numbers of the steps.</param>
public sealed record StopGroup(Angle Setting, IReadOnlyList<int> Steps);
