using Forming.Checks;
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
/// <param name="Text">Why not, in words.</param>
/// <param name="Remedy">Which beam, facet or split would do.</param>
public sealed record ImpossibleFold(int Fold, string Check, JawKind? Strikes, FormattableString Text, Remedy Remedy)
{
    /// <summary>A fold that cannot be made, with advice that was not tried.</summary>
    /// <param name="fold">Its number, from 1.</param>
    /// <param name="check">Id of the check that fails.</param>
    /// <param name="strikes">What the part strikes, or null where a run is too short.</param>
    /// <param name="text">Why not, in words.</param>
    /// <param name="advice">Which beam, facet or split would do.</param>
    public ImpossibleFold(int fold, string check, JawKind? strikes, FormattableString text, FormattableString advice)
        : this(fold, check, strikes, text, new Remedy(advice))
    {
    }
}
