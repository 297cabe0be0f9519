using Forming.Blanks;
using Forming.Facets;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Springback;

namespace Forming.Plans;

/// <summary>The panel: what it is cut from, how it is pulled, how it will look.</summary>
public sealed record PlannedPanel
{
    /// <summary>How it springs back.</summary>
    public required SpringbackReport Springback { get; init; }

    /// <summary>The flat blank.</summary>
    public required Blank Blank { get; init; }

    /// <summary>Registration marks on it.</summary>
    public required IReadOnlyList<PanelMark> Marks { get; init; }

    /// <summary>How much of the facets will show.</summary>
    public required PrintThroughResult PrintThrough { get; init; }

    /// <summary>What it takes to pull it.</summary>
    public required Pull Pull { get; init; }

    /// <summary>How it comes off this form in simulation, or null where that was not asked for.</summary>
    public PanelPrediction? Prediction { get; init; }

    /// <summary>Largest miss of a curve fitted to measured points [mm], or null for any other curve.</summary>
    public double? LargestMissMm { get; init; }
}
