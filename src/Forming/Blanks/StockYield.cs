namespace Forming.Blanks;

/// <summary>How many blanks one stock sheet gives.</summary>
/// <param name="Sheet">The sheet.</param>
/// <param name="FoldsAlongGrain">Whether the folds lie along the rolling direction.</param>
/// <param name="Pieces">Whole blanks, side by side in one direction.</param>
/// <param name="Use">Share of the sheet used, 0 to 1.</param>
public sealed record StockYield(StockSheet Sheet, bool FoldsAlongGrain, int Pieces, double Use);
