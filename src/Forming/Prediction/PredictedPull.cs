namespace Forming.Prediction;

/// <summary>What the pull takes, over the panel's whole width.</summary>
/// <param name="ForceN">Largest hand force [N].</param>
/// <param name="ClampMomentPerWidth">Size of the largest moment at the clamp [N·mm/mm].</param>
/// <param name="ClampLoadN">
/// What the clamp has to hold down against the first fold's push [N]. Half first fold: the panel is simulated clamped at it and held by a clamp
/// a distance d behind, <c>1.5 M/d</c>. Full first fold: the clamp stands half a facet behind it, and this is the largest shear there.
/// A clamp that bears only b deep has M/b to hold on top.
/// </param>
/// <param name="EndAngle">How far the hand has to turn the sheet's end.</param>
/// <param name="EnergyReleasedJ">Elastic energy let go when the pull ends [J].</param>
public sealed record PredictedPull(double ForceN, double ClampMomentPerWidth, double ClampLoadN, Angle EndAngle, double EnergyReleasedJ);
