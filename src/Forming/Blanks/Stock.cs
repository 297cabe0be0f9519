namespace Forming.Blanks;

/// <summary>A sheet that blanks are cut from; the rolling direction runs along its length.</summary>
/// <param name="Name">Its name.</param>
/// <param name="LengthMm">Along the rolling direction [mm], &gt; 0.</param>
/// <param name="WidthMm">Across it [mm], &gt; 0.</param>
public sealed record StockSheet(string Name, double LengthMm, double WidthMm)
{
    /// <summary>Sizes that merchants commonly hold in mm markets (common practice, no source).</summary>
    public static IReadOnlyList<StockSheet> Defaults { get; } =
    [
        new("2000 × 1000 mm", 2000, 1000),
        new("2500 × 1250 mm", 2500, 1250),
        new("3000 × 1500 mm", 3000, 1500),
    ];

    /// <summary>Sizes that merchants commonly hold in inch markets (common practice, no source).</summary>
    public static IReadOnlyList<StockSheet> InchDefaults { get; } =
    [
        new("96 × 48 in", 96 * 25.4, 48 * 25.4),
        new("120 × 48 in", 120 * 25.4, 48 * 25.4),
        new("120 × 60 in", 120 * 25.4, 60 * 25.4),
    ];
}

/// <summary>How many blanks one stock sheet gives.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="FoldsAlongGrain">Whether the folds lie along the rolling direction.</param>
/// <param name="Pieces">Whole blanks, side by side in one direction.</param>
/// <param name="Use">Share of the sheet used, 0 to 1.</param>
public sealed record StockYield(StockSheet Sheet, bool FoldsAlongGrain, int Pieces, double Use);

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
