namespace Forming.Tapers;

/// <summary>What only a tapered form has.</summary>
public sealed record TaperReport
{
    /// <summary>
    /// Largest bias at the near end: how much tighter (+) or opener (-) than wanted a narrow strip cut free there would spring.
    /// </summary>
    public required double EndBiasNear { get; init; }

    /// <summary>The same at the far end.</summary>
    public required double EndBiasFar { get; init; }

    /// <summary>Largest distance of an axis end from its facet's plane [mm].</summary>
    public required double FacetFlatnessMm { get; init; }

    /// <summary>Largest miss of a fold line from its ruling, square to the sheet [mm].</summary>
    public required double TouchMissMm { get; init; }

    /// <summary>Largest shift of a fold line from its ruling, along the sheet [mm].</summary>
    public required double LineShiftMm { get; init; }

    /// <summary>Largest fold-to-fold angle between neighbouring lines on the flat.</summary>
    public required Angle LargestLineAngle { get; init; }

    /// <summary>Whether the second half of a mirrored panel needs an opposite-hand form.</summary>
    public required bool NeedsOppositeHand { get; init; }

    /// <summary>Form and panel in space.</summary>
    public required TaperSolid Solid { get; init; }
}
