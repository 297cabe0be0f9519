namespace Forming.Inspection;

/// <summary>The fewest corrections, or how many are needed at least.</summary>
public sealed record CorrectionPlan
{
    /// <summary>Whether corrections were found; none needed counts.</summary>
    public required bool Found { get; init; }

    /// <summary>The folds to correct, from the lead-in; empty where none is needed or none was found.</summary>
    public required IReadOnlyList<FoldCorrection> Folds { get; init; }

    /// <summary>Proven: with fewer corrected folds than this it cannot be done.</summary>
    public required int LowerBound { get; init; }

    /// <summary>Whether every choice of that many folds was looked at, so that no equally few are gentler.</summary>
    public required bool IsGentlest { get; init; }

    /// <summary>Whether the search ended at its limit of places.</summary>
    public required bool HitLimit { get; init; }

    /// <summary>Places looked at.</summary>
    public required int Nodes { get; init; }

    /// <summary>Error of the sweep afterwards; null where none was found.</summary>
    public Angle? Closing { get; init; }

    /// <summary>Largest miss of a mold line afterwards [mm]; null where none was found.</summary>
    public double? MissMm { get; init; }
}
