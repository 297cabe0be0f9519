using Forming.Materials;

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

/// <summary>Rectangular blanks.</summary>
public static class BlankShape
{
    /// <summary>A rectangular blank with its mass and what stock sheets give.</summary>
    /// <param name="sheet">Material and thickness.</param>
    /// <param name="lengthMm">Square to the folds [mm].</param>
    /// <param name="widthMm">Along the folds [mm].</param>
    /// <param name="stock">Stock sheets.</param>
    public static Blank Rectangle(Sheet sheet, double lengthMm, double widthMm, IReadOnlyList<StockSheet> stock)
    {
        var area = lengthMm * widthMm;
        Point[] outline = [default, new(lengthMm, 0), new(lengthMm, widthMm), new(0, widthMm), default];
        return new(lengthMm, widthMm, area, MassKg(sheet, area), outline, Stock.Count(stock, lengthMm, widthMm));
    }

    /// <summary>Mass of a flat blank: area × thickness × density.</summary>
    /// <param name="sheet">Material and thickness.</param>
    /// <param name="areaMm2">Area [mm²].</param>
    /// <returns>Mass [kg].</returns>
    public static double MassKg(Sheet sheet, double areaMm2) =>
        areaMm2 * sheet.ThicknessMm * sheet.Material.DensityKgPerCubicMetre * 1e-9;
}
