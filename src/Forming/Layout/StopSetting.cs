namespace Forming.Layout;

/// <summary>One setting of the angle stop and the stations it serves.</summary>
/// <param name="FoldAngle">Mean fold angle of the group.</param>
/// <param name="StopAngle">Exact angle under load for it, or null where the fold would stay elastic.</param>
/// <param name="Setting">What the stop is set to, a whole number of its steps; null where there is no stop angle.</param>
/// <param name="Stations">Station numbers.</param>
public sealed record StopSetting(Angle FoldAngle, Angle? StopAngle, Angle? Setting, IReadOnlyList<int> Stations);
