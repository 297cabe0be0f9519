using Forming.Materials;

namespace Forming.Estimates;

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
