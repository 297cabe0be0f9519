namespace Forming.Layout;

/// <summary>One fold's place on the flat form blank; all places are from the chosen datum.</summary>
public sealed record Station
{
    /// <summary>Number from the lead-in, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Centre line [mm].</summary>
    public required double AtMm { get; init; }

    /// <summary>Centre line rounded to the tape [mm].</summary>
    public required double MarkMm { get; init; }

    /// <summary>The rounded centre line as it reads on the tape, such as <c>12 7/16</c>.</summary>
    public required string MarkText { get; init; }

    /// <summary>Bend tangent line on the lead-in side [mm].</summary>
    public required double FirstTangentMm { get; init; }

    /// <summary>Bend tangent line on the lead-out side [mm].</summary>
    public required double SecondTangentMm { get; init; }

    /// <summary>Line set under the nose with the lead-in side clamped [mm].</summary>
    public required double SightLineMm { get; init; }

    /// <summary>Fold angle after springback.</summary>
    public required Angle FoldAngle { get; init; }

    /// <summary>Sum of the fold angles up to and including this one.</summary>
    public required Angle RunningAngle { get; init; }

    /// <summary>Exact angle under load, or null where the fold would stay elastic.</summary>
    public required Angle? StopAngle { get; init; }

    /// <summary>
    /// What the stop is set to, a whole number of its steps; null where there is no stop angle, and before the form is planned.
    /// </summary>
    public Angle? StopSetting { get; init; }

    /// <summary>Radius of the contact curve here, under load [mm]; null at a flat end that a measured factor leaves flat.</summary>
    public required double? RadiusMm { get; init; }

    /// <summary>Facet after this fold on the contact side, mold line to mold line [mm]; the lead-out after the last.</summary>
    public required double FacetAfterMm { get; init; }

    /// <summary>The fold as a line on the flat blank of a tapered form, or null where the folds are parallel.</summary>
    public FoldLine? Line { get; init; }

    /// <summary>Straight part of the facet after this fold [mm].</summary>
    public required double StraightAfterMm { get; init; }
}

/// <summary>Where marks are measured from.</summary>
public enum Datum
{
    /// <summary>The edge of the blank at the lead-in.</summary>
    Edge,

    /// <summary>The edge of the blank at the lead-out.</summary>
    FarEdge,

    /// <summary>The middle of the blank; marks towards the lead-in are negative.</summary>
    Centre,
}
