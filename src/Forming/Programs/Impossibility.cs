using Forming.Programs.Brakes;

namespace Forming.Programs;

/// <summary>Why there is no program.</summary>
/// <param name="IsProven">Whether no order exists for these tools, for certain; handling is left aside in the proof.</param>
/// <param name="States">States that were looked at.</param>
/// <param name="Folds">The folds at fault.</param>
public sealed record Impossibility(bool IsProven, int States, IReadOnlyList<ImpossibleFold> Folds);

/// <summary>A fold that cannot be made last, or in any state.</summary>
/// <param name="Fold">Its number, from 1.</param>
/// <param name="Check">Id of the check that fails.</param>
/// <param name="Strikes">What the part strikes, or null where a run is too short.</param>
/// <param name="Why">Why not, in words.</param>
/// <param name="Remedy">Which beam, facet or split would do.</param>
public sealed record ImpossibleFold(int Fold, string Check, JawKind? Strikes, FormattableString Why, FormattableString Remedy);
