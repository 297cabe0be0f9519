namespace Forming.Prediction;

/// <summary>A faceted form as it stands, planned or already folded: what a panel is wrapped over.</summary>
/// <param name="FacetsMm">[m - 1] facets on the contact side, mold line to mold line [mm].</param>
/// <param name="FoldAngles">[m] fold angles, from the clamped side [rad], each &gt; 0.</param>
/// <param name="OuterFoldRadiusMm">Radius of the folds on the contact side [mm], &gt; 0.</param>
public sealed record StandingForm(IReadOnlyList<double> FacetsMm, IReadOnlyList<double> FoldAngles, double OuterFoldRadiusMm);
