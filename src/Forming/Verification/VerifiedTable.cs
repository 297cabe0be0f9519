namespace Forming.Verification;

/// <summary>A table and what came out.</summary>
/// <param name="Table">The table.</param>
/// <param name="Values">Its values in their order.</param>
public sealed record VerifiedTable(CheckTable Table, IReadOnlyList<CheckResult> Values);
