using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;

namespace Forming.Inspection;

/// <summary>A planned form, what was measured on it, and what it must hold.</summary>
public sealed record InspectionJob
{
    /// <summary>The form as it should be.</summary>
    public required FoldedPolygon Planned { get; init; }

    /// <summary>Shape of its folds.</summary>
    public required FoldShape Fold { get; init; }

    /// <summary>What was measured.</summary>
    public required Measurement Measured { get; init; }

    /// <summary>What it must hold, and how it may be corrected.</summary>
    public required CorrectionRules Rules { get; init; }

    /// <summary>Half or full folds at the ends: where a panel is clamped.</summary>
    public required SteppingEnds Ends { get; init; }

    /// <summary>The panel to be pulled over it, or null.</summary>
    public PanelSpec? Panel { get; init; }
}
