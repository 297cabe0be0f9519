using Forming.Results;

namespace Forming.Outlook;

/// <summary>How sure it is what comes off a form: from what sheets and folds differ by to what the panel does.</summary>
/// <remarks>
/// Causes are independent; the logarithms of radius and ripple and the sweep itself are taken as normal about a mean that the second-order
/// terms shift.
/// </remarks>
public sealed record PanelOutlook
{
    /// <summary>Below this springback factor the way from a cause to the panel is too curved for the method.</summary>
    public const double CoarseFactor = 0.4;

    /// <summary>Below this springback factor a panel is first of all unsure.</summary>
    public const double UnsureFactor = 0.5;

    /// <summary>Why nothing is known, or null.</summary>
    public FormattableString? WhyUnknown { get; init; }

    /// <summary>Whether the bands are rough: little of the bend stays, or only one side of a cause could be followed.</summary>
    public bool IsCoarse { get; init; }

    /// <summary>Whether the bands are estimated in pure bending and not simulated.</summary>
    public bool IsEstimated { get; init; }

    /// <summary>Whether yield stress or springback was measured on the coil.</summary>
    public bool IsMeasured { get; init; }

    /// <summary>Sweep of the panel over sweep of the form under load; 0 where nothing is known.</summary>
    public double SpringbackFactor { get; init; }

    /// <summary>Whether more of the bend springs back than stays, so that this comes before anything else.</summary>
    public bool IsUnsure => Sweep is not null && SpringbackFactor < UnsureFactor;

    /// <summary>Radius over the middle folds, on the face the curve was measured on [mm]; null where the panel is flat there.</summary>
    public OutlookBand? RadiusMm { get; init; }

    /// <summary>Sweep [rad]; null where nothing is known.</summary>
    public OutlookBand? Sweep { get; init; }

    /// <summary>Largest ripple [mm] as predicted, and what 95 panels of 100 stay below; null where it is not known.</summary>
    public (double ValueMm, double HighMm)? Ripple { get; init; }

    /// <summary>Chance that every facet passes the finish, 0 to 1; null where ripple is not known.</summary>
    public double? ChanceOfFacets { get; init; }

    /// <summary>Chance that the sweep is within its tolerance, 0 to 1; null where nothing is known.</summary>
    public double? ChanceOfSweep { get; init; }

    /// <summary>
    /// [5] share of each <see cref="ScatterCause"/> in the variance of the radius, or of the sweep where there is no radius; empty where
    /// nothing varies.
    /// </summary>
    public IReadOnlyList<double> Shares { get; init; } = [];

    /// <summary>The same bands after one springback strip of the coil; null where the springback is measured already.</summary>
    public StripOutlook? AfterStrip { get; init; }

    /// <summary>How far the bands of radius and sweep reach past their values, the farther side of the worse one, as a share.</summary>
    public double? Reach => Sweep is { } sweep ? Math.Max(sweep.Reach, RadiusMm?.Reach ?? 0) : null;

    /// <summary>All of it in a sentence; its arguments are <see cref="Figure"/>s.</summary>
    public FormattableString Text => this switch
    {
        { WhyUnknown: { } why } => $"how sure this panel is cannot be said: {why}",
        { AfterStrip: { } strip, RadiusMm: { } radius } => $"without a strip this panel may come off anywhere from R {Figure.Length(radius.Low)} to R {Figure.Length(radius.High)}, and from {Figure.Angle(Sweep!.Value.Low)} to {Figure.Angle(Sweep.Value.High)}; one strip narrows it to R {Figure.Length(strip.RadiusMm!.Value.Low)} to {Figure.Length(strip.RadiusMm.Value.High)}, {Figure.Angle(strip.Sweep.Low)} to {Figure.Angle(strip.Sweep.High)}",
        { AfterStrip: { } strip } => $"without a strip this panel may come off anywhere from {Figure.Angle(Sweep!.Value.Low)} to {Figure.Angle(Sweep.Value.High)}; one strip narrows it to {Figure.Angle(strip.Sweep.Low)} to {Figure.Angle(strip.Sweep.High)}",
        { RadiusMm: { } radius } => $"this panel may come off anywhere from R {Figure.Length(radius.Low)} to R {Figure.Length(radius.High)}, and from {Figure.Angle(Sweep!.Value.Low)} to {Figure.Angle(Sweep.Value.High)}",
        _ => $"this panel may come off anywhere from {Figure.Angle(Sweep!.Value.Low)} to {Figure.Angle(Sweep.Value.High)}",
    };

    internal static PanelOutlook Unknown(FormattableString why) => new() { WhyUnknown = why };
}

/// <summary>What 95 of 100 panels lie between.</summary>
/// <param name="Low">Low end.</param>
/// <param name="Value">What is predicted.</param>
/// <param name="High">High end.</param>
public readonly record struct OutlookBand(double Low, double Value, double High)
{
    /// <summary>How far the band reaches past the value, the farther side, as a share of it.</summary>
    public double Reach => Math.Max(High - Value, Value - Low) / Value;
}

/// <summary>The bands after one springback strip of the coil, bent to the form's radius and read to 1 %.</summary>
/// <param name="RadiusMm">Radius [mm], or null where the panel is flat.</param>
/// <param name="Sweep">Sweep [rad].</param>
public sealed record StripOutlook(OutlookBand? RadiusMm, OutlookBand Sweep);

/// <summary>What a panel comes off differently for.</summary>
public enum ScatterCause
{
    /// <summary>Yield stress, and the whole flow curve with it.</summary>
    Yield,

    /// <summary>Thickness of the panel.</summary>
    Thickness,

    /// <summary>Young's modulus.</summary>
    Modulus,

    /// <summary>Fold angles of the form.</summary>
    FoldAngle,

    /// <summary>Marks of the form.</summary>
    Mark,
}
