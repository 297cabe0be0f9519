namespace Forming.Estimates;

/// <summary>Sheet by the stock sheet; a blank pays for its share of as many as one sheet gives.</summary>
/// <param name="Money">Price of a stock sheet, at least 0.</param>
/// <param name="Sheet">Name of the stock sheet.</param>
public sealed record PricePerStockSheet(double Money, string Sheet) : SheetPrice;
