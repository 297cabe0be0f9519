namespace Forming.Inspection;

/// <summary>A fold to be corrected.</summary>
/// <param name="Fold">Index of the fold, from 0.</param>
/// <param name="Steps">Steps of the stop; negative opens it.</param>
public readonly record struct FoldCorrection(int Fold, int Steps);
