namespace Forming.Corrections;

/// <summary>What was measured on a panel that came off a form; at least one reading.</summary>
public sealed record MeasuredPanel
{
    /// <summary>Turn from the lead-in to the lead-out, or null.</summary>
    public Angle? Sweep { get; init; }

    /// <summary>95 % of readings of the sweep lie within this of the true one.</summary>
    public Angle SweepError { get; init; } = Angle.FromDegrees(0.2);

    /// <summary>Radius of a stretch, on the face the curve is measured on [mm], or null.</summary>
    public double? RadiusMm { get; init; }

    /// <summary>95 % of readings of the radius lie within this of the true one [mm], &gt; 0.</summary>
    public double RadiusErrorMm { get; init; } = 0.5;

    /// <summary>The folds between which the radius was measured, by index; null takes the form's middle folds.</summary>
    public (int From, int To)? Stretch { get; init; }

    /// <summary>
    /// Points of a template along the face the curve is measured on, in order from the lead-in, in any frame in which the panel turns
    /// left [mm]; null where none were taken.
    /// </summary>
    public IReadOnlyList<Point>? Points { get; init; }

    /// <summary>95 % of points lie within this of the face [mm], &gt; 0.</summary>
    public double PointErrorMm { get; init; } = 0.5;
}
