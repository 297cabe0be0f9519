using Forming.Blanks;
using Forming.Facets;
using Forming.Layout;
using Forming.Pulling;

namespace Forming.Plans;

/// <summary>The form: where to fold, how far, and what it is cut from.</summary>
public sealed record PlannedForm
{
    /// <summary>Sum of all fold angles.</summary>
    public required Angle Sweep { get; init; }

    /// <summary>The folds in order.</summary>
    public required IReadOnlyList<Station> Stations { get; init; }

    /// <summary>Stop settings, each for the folds whose angles agree within the stop's resolution.</summary>
    public required IReadOnlyList<StopSetting> StopSettings { get; init; }

    /// <summary>What rounding the stop angles adds to the whole form: above 0 it closes too far; null where a fold has no stop angle.</summary>
    public required Angle? StopRounding { get; init; }

    /// <summary>How evenly the folds came out.</summary>
    public required SteppingReport Stepping { get; init; }

    /// <summary>Largest effect of rounding the marks [mm].</summary>
    public required double LargestRoundingMm { get; init; }

    /// <summary>Neutral factor in use.</summary>
    public required double NeutralFactor { get; init; }

    /// <summary>Blank length with K = 0.5 less the blank length given [mm]: small folds hardly wrap the nose.</summary>
    public required double BlankAtMidNeutralMm { get; init; }

    /// <summary>Largest miss when the flat layout is folded back [mm].</summary>
    public required double FoldBackMissMm { get; init; }

    /// <summary>The flat blank.</summary>
    public required Blank Blank { get; init; }

    /// <summary>The form in section.</summary>
    public required Section Section { get; init; }

    /// <summary>How far the form gives under the pull.</summary>
    public required FormGive Give { get; init; }
}
