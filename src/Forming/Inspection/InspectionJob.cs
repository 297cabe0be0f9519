using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Prediction;

namespace Forming.Inspection;

/// <summary>A planned form, what was measured on it, and what it must hold.</summary>
public sealed record InspectionJob
{
    /// <summary>The form as it should be; along its near edge where the folds are not parallel.</summary>
    public required FoldedPolygon Planned { get; init; }

    /// <summary>The form as it should be where the folds are not parallel; else null.</summary>
    public TaperedForm? Taper { get; init; }

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

    /// <summary>The form as a beam that gives under the pull; null for a rigid form.</summary>
    public FormBeam? Beam { get; init; }
}

/// <summary>
/// What was measured on the folded form: fold angles, with facets or spacings where they were taken too, or points of a template. Where
/// folds are not parallel, facets, spacings and points are those of the near end.
/// </summary>
public sealed record Measurement
{
    /// <summary>[n] fold angles from the lead-in; null where points were taken.</summary>
    public IReadOnlyList<Angle>? Angles { get; init; }

    /// <summary>[n - 1] distances between neighbouring fold centre lines on the flat blank [mm], or null.</summary>
    public IReadOnlyList<double>? SpacingsMm { get; init; }

    /// <summary>[n - 1] facets on the contact side, mold line to mold line [mm], or null.</summary>
    public IReadOnlyList<double>? FacetsMm { get; init; }

    /// <summary>
    /// [n + 1] points along the contact side of every flat, lead-in to lead-out, at least two each [mm]; null where angles were taken.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<Point>>? Points { get; init; }

    /// <summary>The same at the far end of a form with slanting folds, without angles; null where nothing was measured there.</summary>
    public Measurement? Far { get; init; }
}
