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
