using Forming.Materials;

namespace Forming.Estimates;

/// <summary>What sheet costs.</summary>
public abstract record SheetPrice;

/// <summary>Sheet by its mass; the flat blank's own mass counts, no waste.</summary>
/// <param name="Money">Price of a kilogram, at least 0.</param>
public sealed record PricePerKg(double Money) : SheetPrice;

/// <summary>Sheet by the stock sheet; a blank pays for its share of as many as one sheet gives.</summary>
/// <param name="Money">Price of a stock sheet, at least 0.</param>
/// <param name="Sheet">Name of the stock sheet.</param>
public sealed record PricePerStockSheet(double Money, string Sheet) : SheetPrice;

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
