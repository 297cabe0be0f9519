namespace Forming.Prediction;

/// <summary>A faceted form as it stands, planned or already folded: what a panel is wrapped over.</summary>
/// <param name="FacetsMm">[m - 1] facets on the contact side, mold line to mold line [mm].</param>
/// <param name="FoldAngles">[m] fold angles, from the clamped side [rad], each &gt; 0.</param>
/// <param name="OuterFoldRadiusMm">Radius of the folds on the contact side [mm], &gt; 0.</param>
public sealed record StandingForm(IReadOnlyList<double> FacetsMm, IReadOnlyList<double> FoldAngles, double OuterFoldRadiusMm)
{
    /// <summary>Number of folds.</summary>
    public int Folds => FoldAngles.Count;

    /// <summary>The folds over which a panel's radius is told, by index: the first two and the last lie differently, so they are left out where enough remain.</summary>
    /// <remarks>From the third fold to the last but one; with five folds to the last one, with fewer from the first.</remarks>
    public (int From, int To) MiddleFolds => (Folds > 4 ? 2 : 0, Folds > 5 ? Folds - 2 : Folds - 1);

    /// <summary>From a fold's mold line to its bend tangent lines [mm].</summary>
    /// <param name="fold">Index of the fold, from 0.</param>
    public double SetbackMm(int fold) => OuterFoldRadiusMm * Math.Tan(FoldAngles[fold] / 2);

    /// <summary>Straight part of a facet, which is the chord between its fold centres [mm].</summary>
    /// <param name="facet">Index of the facet, from 0.</param>
    public double StraightMm(int facet) => FacetsMm[facet] - SetbackMm(facet) - SetbackMm(facet + 1);
}
