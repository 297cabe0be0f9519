using Forming.Facets;
using Forming.Folds;
using Forming.Materials;
using Forming.Springback;

namespace Forming.Jobs;

/// <summary>The faceted form that is to be folded.</summary>
public sealed record FormSpec
{
    /// <summary>Material and thickness.</summary>
    public required Sheet Sheet { get; init; }

    /// <summary>Inside radius of its folds [mm], &gt; 0.</summary>
    public required double FoldRadiusMm { get; init; }

    /// <summary>Flat before the first fold, to its mold line [mm], at least 0.</summary>
    public required double LeadInMm { get; init; }

    /// <summary>Flat after the last fold, to its mold line [mm], at least 0.</summary>
    public required double LeadOutMm { get; init; }

    /// <summary>Width along the folds [mm], &gt; 0.</summary>
    public required double WidthMm { get; init; }

    /// <summary>What supports it.</summary>
    public FormBacking Backing { get; init; } = FormBacking.None;

    /// <summary>Where the folds go.</summary>
    public Stepping Stepping { get; init; } = new();

    /// <summary>How the folds lie to the form's rolling direction.</summary>
    public Grain Grain { get; init; } = Grain.Unknown;

    /// <summary>Neutral factor K of the folds, 0 to 0.5 and a little more; null takes the published formula.</summary>
    public double? NeutralFactor { get; init; }

    /// <summary>What test strips taught about the stop, or null.</summary>
    public StopLine? Stop { get; init; }

    /// <summary>How stop angles are rounded to the steps of the stop.</summary>
    public StopRounding StopRounding { get; init; }

    /// <summary>How its folds spring back: by what test strips taught, or estimated.</summary>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="law">Bending law of its sheet.</param>
    /// <param name="brake">The brake.</param>
    public FoldSpringback SpringbackOf(FoldShape fold, BendingLaw law, BrakeSpec brake) => Stop is { } line
        ? new(line)
        : FoldSpringback.Estimate(fold, law, brake.ReachMm ?? (brake.DieOpeningMm / 2) ?? FoldSpringback.DefaultReachMm);
}

/// <summary>What supports the form.</summary>
public enum FormBacking
{
    /// <summary>Nothing: the bent sheet carries the pull by itself.</summary>
    None,

    /// <summary>Ribs cut to the inside profile, which keep the form from bending.</summary>
    Ribs,
}
