using Forming.Facets;
using Forming.Jobs;

namespace Forming.Prediction;

/// <summary>The panel let go, against the curve that is wanted.</summary>
public sealed record PredictedShape
{
    /// <summary>
    /// Radius of the circle that fits best from the third fold to the last but one (with five folds to the last one, with fewer from the
    /// first), on the face the curve was measured on [mm]; null where the panel came off flat there.
    /// </summary>
    public required double? RadiusMm { get; init; }

    /// <summary>Mean radius of the wanted curve over the same stretch [mm]; null where it is flat there.</summary>
    public required double? WantedRadiusMm { get; init; }

    /// <summary>Turn of the whole panel.</summary>
    public required Angle Sweep { get; init; }

    /// <summary>Length of the wanted curve from its first tangent point to its last [mm].</summary>
    public required double WantedLengthMm { get; init; }

    /// <summary>Turn that is wanted.</summary>
    public required Angle WantedSweep { get; init; }

    /// <summary>Turn past the wanted one.</summary>
    public Angle SweepMiss => Sweep - WantedSweep;

    /// <summary>Miss of the radius as a share, at least 0; null where the panel or the wanted curve is flat there.</summary>
    public double? RadiusMiss => RadiusMm is { } radius && WantedRadiusMm is { } wanted ? Math.Abs((radius / wanted) - 1) : null;

    /// <summary>
    /// Where the panel is at the end of the curve, the lead-in flats laid on each other: from the wanted place along the wanted lead-out
    /// and across it, to its left [mm].
    /// </summary>
    public required Point LeadOutOffset { get; init; }

    /// <summary>Largest distance from the wanted curve, laid over it as well as it goes [mm].</summary>
    public required double MissMm { get; init; }

    /// <summary>Largest distance from the wanted curve, the lead-in flats laid on each other [mm].</summary>
    public required double HeldMissMm { get; init; }

    /// <summary>What a tapered panel is at its ends; null for a straight one, which is alike all along.</summary>
    public PredictedEnds? Ends { get; init; }

    /// <summary>The mid surface, clamp to hand; a tapered panel's half-way along its rulings.</summary>
    public required IReadOnlyList<ReleasedPoint> Curve { get; init; }

    /// <summary>The facets in order.</summary>
    public required IReadOnlyList<PredictedFacet> Facets { get; init; }

    /// <summary>Whether the panel is within what is allowed.</summary>
    /// <param name="tolerance">What is allowed.</param>
    public bool Meets(FinishedTolerance tolerance) =>
        Math.Abs(SweepMiss.Radians) <= tolerance.Sweep.Radians
        && !(RadiusMiss > tolerance.RadiusShare)
        && MissMm <= tolerance.ProfileOver(WantedLengthMm);
}

/// <summary>Both ends of a tapered panel that was let go.</summary>
/// <param name="Near">Near end.</param>
/// <param name="Far">Far end.</param>
public sealed record PredictedEnds(PredictedEnd Near, PredictedEnd Far);

/// <summary>One end of a tapered panel that was let go; radii square to the rulings.</summary>
/// <param name="RadiusMm">As <see cref="PredictedShape.RadiusMm"/> [mm].</param>
/// <param name="WantedRadiusMm">As <see cref="PredictedShape.WantedRadiusMm"/> [mm].</param>
/// <param name="RippleMm">Largest peak-to-valley height [mm], or null where it is not known.</param>
/// <param name="Slope">Largest slope against the facets' own smooth arcs, or null where it is not known.</param>
/// <param name="Bias">How much tighter (+) or opener (-) than the panel a narrow strip cut free there would spring, as a share.</param>
public sealed record PredictedEnd(double? RadiusMm, double? WantedRadiusMm, double? RippleMm, Angle? Slope, double Bias);

/// <summary>One facet in the panel that was let go.</summary>
/// <param name="Number">Number of the fold before it, from 1.</param>
/// <param name="WidthMm">Facet on the contact side, mold line to mold line [mm].</param>
/// <param name="IsFlatOfCurve">Whether the wanted curve is flat here, so that the facet makes no ripple.</param>
/// <param name="RippleMm">Peak to valley from the facet's own smooth arc [mm], or null where it is not known.</param>
/// <param name="Slope">Largest angle between the panel and that arc, or null where it is not known.</param>
/// <param name="RadiusMm">Mean radius over it on the face the curve was measured on [mm]; null where the panel is flat.</param>
public sealed record PredictedFacet(int Number, double WidthMm, bool IsFlatOfCurve, double? RippleMm, Angle? Slope, double? RadiusMm);

/// <summary>How much of the facets will show.</summary>
/// <param name="WhyUnknown">Why it is not known, or null.</param>
/// <param name="HeightMm">Largest peak-to-valley height [mm], or null where it is not known.</param>
/// <param name="Slope">Largest slope against the facets' own smooth arcs, or null where it is not known.</param>
/// <param name="Facet">Number of the facet nearest to the limits of the finish, or null where it is not known.</param>
public sealed record PredictedRipple(string? WhyUnknown, double? HeightMm, Angle? Slope, int? Facet)
{
    /// <summary>Whether it is known; false never means smooth.</summary>
    public bool Known => WhyUnknown is null;
}

/// <summary>What the pull takes, over the panel's whole width.</summary>
/// <param name="ForceN">Largest hand force [N].</param>
/// <param name="ClampMomentPerWidth">Size of the largest moment at the clamp [N·mm/mm].</param>
/// <param name="ClampLoadN">
/// What the clamp has to hold down against the first fold's push [N]. Half first fold: the panel is simulated clamped at it and held by a
/// clamp
/// a distance d behind, <c>1.5 M/d</c>. Full first fold: the clamp is half a facet behind it, and this is the largest shear there.
/// A clamp that bears only b deep has M/b to hold on top.
/// </param>
/// <param name="EndAngle">How far the hand has to turn the sheet's end.</param>
/// <param name="EnergyReleasedJ">Elastic energy let go when the pull ends [J].</param>
public sealed record PredictedPull(double ForceN, double ClampMomentPerWidth, double ClampLoadN, Angle EndAngle, double EnergyReleasedJ);

/// <summary>Whether the facets show at a finish.</summary>
/// <param name="Finish">The finish with its limits.</param>
/// <param name="Shows">Whether a facet passes a limit, or null where it is not known.</param>
public sealed record FinishVerdict(Finish Finish, bool? Shows);
