namespace Forming.Programs;

/// <summary>An order that was followed.</summary>
/// <param name="Name">Its name.</param>
/// <param name="IsWhole">Whether it came to its end.</param>
/// <param name="FailedFold">Number of the fold at which it failed, or null.</param>
/// <param name="FailedCheck">Id of the check that failed, or null.</param>
/// <param name="Strikes">What the part strikes there, or null.</param>
/// <param name="HandlingCost">What its handling costs as far as it came.</param>
/// <param name="ClearanceMm">Its least clearance as far as it came [mm].</param>
public sealed record OrderTried(
    string Name, bool IsWhole, int? FailedFold, string? FailedCheck, string? Strikes, int HandlingCost, double ClearanceMm);
