namespace Forming.Jobs;

/// <summary>How much sheets and folds differ from what is planned: one standard deviation each, independent of each other.</summary>
/// <param name="Yield">Of the yield stress and the whole flow curve with it, as a share, at least 0.</param>
/// <param name="ThicknessMm">Of the panel's thickness [mm], at least 0.</param>
/// <param name="Modulus">Of Young's modulus, as a share, at least 0.</param>
/// <param name="FoldAngle">Of a fold's angle, fold by fold, at least 0.</param>
/// <param name="MarkMm">Of a fold's mark from the datum, mark by mark [mm], at least 0.</param>
public sealed record Scatter(double Yield, double ThicknessMm, double Modulus, Angle FoldAngle, double MarkMm);
