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

/// <summary>A fold to be corrected.</summary>
/// <param name="Fold">Index of the fold, from 0.</param>
/// <param name="Steps">Steps of the stop; negative opens it.</param>
public readonly record struct FoldCorrection(int Fold, int Steps);

/// <summary>How folds may be corrected, and what the form must hold afterwards.</summary>
/// <param name="Step">Step of the stop [rad], &gt; 0.</param>
/// <param name="Direction">Which way.</param>
/// <param name="MostSteps">Most steps at one fold to either side, at least 1.</param>
/// <param name="Closing">Error of the sweep that may be left.</param>
/// <param name="VertexMm">Miss of any mold line that may be left, the first flat fixed [mm].</param>
public sealed record CorrectionRules(Angle Step, CorrectionDirection Direction, int MostSteps, Angle Closing, double VertexMm)
{
    /// <summary>Fewest steps at one fold; below 0 opens it.</summary>
    public int LeastSteps => Direction == CorrectionDirection.CloseOnly ? 0 : -MostSteps;
}

/// <summary>Which way a fold may be corrected.</summary>
public enum CorrectionDirection
{
    /// <summary>Folded further only: the brake does it.</summary>
    CloseOnly,

    /// <summary>Folded further, or opened again.</summary>
    Both,
}
