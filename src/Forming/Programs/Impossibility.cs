namespace Forming.Programs;

/// <summary>Why there is no program.</summary>
/// <param name="IsProven">Whether no order exists for these tools, for certain; handling is left aside in the proof.</param>
/// <param name="States">States that were looked at.</param>
/// <param name="Folds">The folds at fault.</param>
public sealed record Impossibility(bool IsProven, int States, IReadOnlyList<ImpossibleFold> Folds);
