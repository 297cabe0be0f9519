namespace Forming.Prediction;

/// <summary>The pull at the moment when the panel comes to lie on a fold.</summary>
/// <param name="Fold">Number of the fold just touched, from 1; one more than there are folds when the panel meets the lead-out.</param>
/// <param name="EndAngle">Direction of the sheet's end: how far the hand has turned it.</param>
/// <param name="ForcePerWidth">Hand force, square to the sheet's end [N/mm].</param>
/// <param name="ClampMomentPerWidth">Size of the moment at the clamp [N·mm/mm]; behind a full first fold it bends the sheet the other way.</param>
/// <param name="ClampShearPerWidth">Force with which a clamp behind the first fold holds the sheet down against that fold's push [N/mm]; 0 for a clamp at the fold.</param>
public sealed record PullStep(int Fold, Angle EndAngle, double ForcePerWidth, double ClampMomentPerWidth, double ClampShearPerWidth);
