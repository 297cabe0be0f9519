namespace Forming.Prediction;

/// <summary>What the pull takes, over the panel's whole width.</summary>
/// <param name="ForceN">Largest hand force [N].</param>
/// <param name="ClampMomentPerWidth">Largest moment at the clamp [N·mm/mm].</param>
/// <param name="ClampLoadN">Hold-down at the clamp, <c>1.5 M/d</c> [N].</param>
/// <param name="EndAngle">How far the hand has to turn the sheet's end.</param>
/// <param name="EnergyReleasedJ">Elastic energy let go when the pull ends [J].</param>
public sealed record PredictedPull(double ForceN, double ClampMomentPerWidth, double ClampLoadN, Angle EndAngle, double EnergyReleasedJ);
