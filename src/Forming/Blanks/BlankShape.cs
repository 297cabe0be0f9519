using Forming.Materials;

namespace Forming.Blanks;

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
