namespace Forming.Facets;

/// <summary>What came of refining the folds by the predicted ripple.</summary>
/// <param name="ClosedFormFolds">Folds by the closed form.</param>
/// <param name="Folds">Folds kept.</param>
/// <param name="WhyKept">Why the closed form's folds were kept, or null where the predicted ripple chose.</param>
public sealed record SteppingRefinement(int ClosedFormFolds, int Folds, string? WhyKept);
