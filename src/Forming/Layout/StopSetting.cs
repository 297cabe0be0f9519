namespace Forming.Layout;

/// <summary>One setting of the angle stop and the stations it serves.</summary>
/// <param name="FoldAngle">Mean fold angle of the group.</param>
/// <param name="StopAngle">Angle under load for it, or null where the fold would stay elastic.</param>
/// <param name="Stations">Station numbers.</param>
public sealed record StopSetting(Angle FoldAngle, Angle? StopAngle, IReadOnlyList<int> Stations);
