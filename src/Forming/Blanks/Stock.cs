namespace Forming.Blanks;

/// <summary>How many rectangular blanks stock sheets give.</summary>
public static class Stock
{
    /// <summary>Whole blanks side by side, folds across and along the rolling direction, for every sheet.</summary>
    /// <param name="sheets">The sheets.</param>
    /// <param name="lengthMm">Blank square to the folds [mm].</param>
    /// <param name="widthMm">Blank along the folds [mm].</param>
    /// <returns>[2 × sheets] yields. No allowance for the cut.</returns>
    public static IReadOnlyList<StockYield> Count(IReadOnlyList<StockSheet> sheets, double lengthMm, double widthMm)
    {
        var yields = new StockYield[2 * sheets.Count];
        for (var i = 0; i < sheets.Count; i++)
        {
            yields[2 * i] = Count(sheets[i], foldsAlongGrain: false, lengthMm, widthMm);
            yields[(2 * i) + 1] = Count(sheets[i], foldsAlongGrain: true, widthMm, lengthMm);
        }

        return yields;
    }

    private static StockYield Count(StockSheet sheet, bool foldsAlongGrain, double alongSheet, double acrossSheet)
    {
        var pieces = Fit(sheet.LengthMm, alongSheet) * Fit(sheet.WidthMm, acrossSheet);
        return new(sheet, foldsAlongGrain, pieces, pieces * alongSheet * acrossSheet / (sheet.LengthMm * sheet.WidthMm));
    }

    // A blank as long as the sheet fits, whatever the last digit says.
    private static int Fit(double sheet, double blank) => (int)Math.Min(1e6, Math.Floor((sheet / blank) + 1e-9));
}
