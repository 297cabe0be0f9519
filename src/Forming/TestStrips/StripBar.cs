using Forming.Facets;
using Forming.Prediction;
using Forming.Pulling;

namespace Forming.TestStrips;

/// <summary>What a strip is pulled round.</summary>
public abstract record StripBar;

/// <summary>A round bar or tube, or a round form: the strip lies on it all along.</summary>
/// <param name="RadiusMm">Radius of its outside, which the strip's inside face lies on under load [mm], &gt; 0.</param>
public sealed record RoundBar(double RadiusMm) : StripBar;

/// <summary>A faceted form.</summary>
/// <param name="Form">Its folds and facets, at least two folds.</param>
/// <param name="Ends">Half or full folds at its ends: where the clamp is.</param>
/// <param name="LeverMm">Hand to the end of the curve: the last fold, or half a facet past a full one [mm], at least 0.</param>
public sealed record FacetedBar(StandingForm Form, SteppingEnds Ends, double LeverMm) : StripBar
{
    /// <summary>How a strip is held and pulled.</summary>
    /// <param name="places">Where the folds meet it.</param>
    internal WrapSetup SetupOver(FoldPlaces places) =>
        new(LeverMm + places.EndMm - places.AlongMm[^1], Clamp.ChosenGapMm(Ends, Form.StraightMm(0)));

    /// <summary>Whether a strip would be pulled over it in the same way.</summary>
    /// <param name="other">The other form.</param>
    internal bool IsLike(FacetedBar other) =>
        Ends == other.Ends
        && LeverMm == other.LeverMm
        && Form.OuterFoldRadiusMm == other.Form.OuterFoldRadiusMm
        && Form.FacetsMm.SequenceEqual(other.Form.FacetsMm)
        && Form.FoldAngles.SequenceEqual(other.Form.FoldAngles);
}
