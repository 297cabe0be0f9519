using Forming.Facets;
using Forming.Jobs;

namespace Forming.Prediction;

/// <summary>A panel and the form it is to be pulled over.</summary>
public sealed record PredictionJob
{
    /// <summary>The panel that is wanted, and how it will be pulled.</summary>
    public required PanelSpec Panel { get; init; }

    /// <summary>The form; a tapered one's section half-way along its folds.</summary>
    public required StandingForm Form { get; init; }

    /// <summary>
    /// A tapered form's sections where <see cref="Curves.RuledStrips.Places"/> are, near end to far end; null takes them by the panel's
    /// widths from the middle one.
    /// </summary>
    public IReadOnlyList<StandingForm>? Strips { get; init; }

    /// <summary>
    /// The form that the panel was pulled over and let go before, with as many folds in the same places; null for a flat panel.
    /// </summary>
    public StandingForm? PulledBefore { get; init; }

    /// <summary>Half or full folds at the ends of the form: where the clamp is.</summary>
    public required SteppingEnds Ends { get; init; }

    /// <summary>Hand to the end of the curve [mm], at least 0.</summary>
    public required double LeverMm { get; init; }

    /// <summary>The form as a beam that gives under the pull; null for a rigid form.</summary>
    public FormBeam? Beam { get; init; }

    /// <summary>
    /// Whether the curve's end is the form's and not the wanted one's: a form that already exists need not be made for it.
    /// </summary>
    public bool IsStanding { get; init; }

    /// <summary>The units that the caller states it in.</summary>
    public CallerUnits Units { get; init; } = CallerUnits.Mm;

    /// <summary>Longest lever that keeps the wrap in order [mm]; 0 where none does, null where any does.</summary>
    public required double? LongestLeverMm { get; init; }
}
