namespace Forming.Blanks;

/// <summary>A flat blank.</summary>
/// <param name="LengthMm">Square to the folds [mm].</param>
/// <param name="WidthMm">Along the folds [mm].</param>
/// <param name="AreaMm2">Area [mm²].</param>
/// <param name="MassKg">Mass [kg].</param>
/// <param name="Outline">[n] corners, first = last, x from the lead-in edge, y along the folds [mm].</param>
/// <param name="Stock">What each stock sheet gives, folds across and along the grain.</param>
public sealed record Blank(
    double LengthMm,
    double WidthMm,
    double AreaMm2,
    double MassKg,
    IReadOnlyList<Point> Outline,
    IReadOnlyList<StockYield> Stock);
