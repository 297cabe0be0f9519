using Forming.Facets;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Results;

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
    /// <summary>
    /// Outside radius of folds that is taken where it is not known [mm]: an assumption. With facets given from mold line to mold line,
    /// 2.5 to 6 mm move radius and sweep by less than half a percent.
    /// </summary>
    public const double UsualFoldRadiusMm = 4;

    /// <summary>How a strip is held and pulled.</summary>
    /// <param name="places">Where the folds meet it.</param>
    internal WrapSetup SetupOver(FoldPlaces places) =>
        new(LeverMm + places.EndMm - places.AlongMm[^1], Clamp.ChosenGapMm(Ends, Form.StraightMm(0)));

    /// <summary>Refuses a form whose folds leave a facet no straight part.</summary>
    /// <param name="strip">Place of the strip in the request.</param>
    /// <exception cref="NoSolutionException"><c>strips.facet-too-short</c>.</exception>
    internal void RefuseShortFacets(int strip)
    {
        for (var j = 0; j < Form.FacetsMm.Count; j++)
        {
            if (Form.StraightMm(j) > 0)
                continue;
            var least = Form.SetbackMm(j) + Form.SetbackMm(j + 1);
            throw new NoSolutionException(
                "strips.facet-too-short",
                FormattableString.Invariant($"strips[{strip}].stations[{j}].facetAfter"),
                $"after fold {j + 1} the folds' setbacks take {Figure.Length(least)} of {Figure.Length(Form.FacetsMm[j])}",
                $"more than {Figure.Length(least)}");
        }
    }

    /// <summary>Whether a strip would be pulled over it in the same way.</summary>
    /// <param name="other">The other form.</param>
    internal bool IsLike(FacetedBar other) =>
        Ends == other.Ends
        && LeverMm == other.LeverMm
        && Form.OuterFoldRadiusMm == other.Form.OuterFoldRadiusMm
        && Form.FacetsMm.SequenceEqual(other.Form.FacetsMm)
        && Form.FoldAngles.SequenceEqual(other.Form.FoldAngles);
}
