namespace Forming.Estimates;

/// <summary>Sheet by its mass; the flat blank's own mass counts, no waste.</summary>
/// <param name="Money">Price of a kilogram, at least 0.</param>
public sealed record PricePerKg(double Money) : SheetPrice;
