using Forming.Materials;

namespace Forming.Estimates;

/// <summary>What sheet costs.</summary>
public abstract record SheetPrice;

/// <summary>Sheet by its mass.</summary>
/// <param name="Money">Price of a kilogram, at least 0.</param>
public sealed record PricePerKg(double Money) : SheetPrice;

/// <summary>Sheet by the stock sheet.</summary>
/// <param name="Money">Price of a stock sheet, at least 0.</param>
/// <param name="Sheet">Name of the stock sheet.</param>
public sealed record PricePerStockSheet(double Money, string Sheet) : SheetPrice;

/// <summary>Which sheet a job pays for.</summary>
public enum SheetBuying
{
    /// <summary>The area of its blanks and a share of scrap; what is left of a sheet goes back to stock.</summary>
    AreaUsed,

    /// <summary>Whole stock sheets, as many as its blanks need; what is left over is paid for.</summary>
    WholeSheets,
}

/// <summary>How sheet is bought.</summary>
/// <param name="Price">What it costs.</param>
/// <param name="Buying">Which of it the job pays for.</param>
/// <param name="Sheet">Name of the stock sheet that blanks are nested on; null takes the one that costs least.</param>
/// <param name="ScrapShare">Share of the sheet that is scrap, 0 to below 1, with <see cref="SheetBuying.AreaUsed"/>; null takes what is left
/// of a stock sheet that is full of blanks.</param>
public sealed record SheetPurchase(
    SheetPrice Price, SheetBuying Buying = SheetBuying.AreaUsed, string? Sheet = null, double? ScrapShare = null)
{
    /// <summary>Name of the one sheet that blanks are nested on, or null where any will do.</summary>
    internal string? OnlySheet => Price is PricePerStockSheet named ? named.Sheet : Sheet;
}

/// <summary>Prices in no currency, which only keep labour and sheet in a rough proportion to each other: assumptions.</summary>
public static class NominalPrices
{
    /// <summary>An hour of one person's work.</summary>
    public const double LabourPerHour = 60;

    /// <summary>A kilogram of sheet.</summary>
    /// <param name="family">Family of its metal.</param>
    public static double SheetPerKg(MetalFamily family) => family switch
    {
        MetalFamily.Steel => 2,
        MetalFamily.GalvanizedSteel => 2.2,
        MetalFamily.Stainless => 5,
        MetalFamily.Aluminium => 6,
        MetalFamily.Brass => 11,
        MetalFamily.Copper => 13,
        MetalFamily.Magnesium => 30,
        MetalFamily.Titanium => 60,
        _ => 5,
    };
}
