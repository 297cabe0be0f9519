namespace Forming.Prediction;

/// <summary>The panel let go, against the curve that is wanted.</summary>
public sealed record PredictedShape
{
    /// <summary>Radius of the circle that fits best from the third fold to the last but one (with five folds to the last one, with fewer from the first), on the face the curve was measured on [mm]; null where the panel came off flat there.</summary>
    public required double? RadiusMm { get; init; }

    /// <summary>Mean radius of the wanted curve over the same stretch [mm]; null where it is flat there.</summary>
    public required double? WantedRadiusMm { get; init; }

    /// <summary>Turn of the whole panel.</summary>
    public required Angle Sweep { get; init; }

    /// <summary>Turn that is wanted.</summary>
    public required Angle WantedSweep { get; init; }

    /// <summary>Largest distance from the wanted curve, laid over it as well as it goes [mm].</summary>
    public required double MissMm { get; init; }

    /// <summary>Largest distance from the wanted curve, the lead-in flats laid on each other [mm].</summary>
    public required double HeldMissMm { get; init; }

    /// <summary>The mid surface, clamp to hand.</summary>
    public required IReadOnlyList<ReleasedPoint> Curve { get; init; }

    /// <summary>The facets in order.</summary>
    public required IReadOnlyList<PredictedFacet> Facets { get; init; }
}
