using Forming.Blanks;
using Forming.Jobs;
using Forming.Results;

namespace Forming.Estimates;

/// <summary>What the sheet of blanks costs.</summary>
public static class MaterialCost
{
    /// <summary>Prices blanks by their mass, or by their share of a stock sheet.</summary>
    /// <param name="id"><c>form-sheet</c> or <c>panel-sheet</c>.</param>
    /// <param name="blank">One blank.</param>
    /// <param name="grain">How its folds have to lie to the rolling direction; where that is not known, whatever gives more blanks.</param>
    /// <param name="pieces">How many, at least 1.</param>
    /// <param name="price">The price.</param>
    /// <param name="subject">Contract path of the price.</param>
    /// <param name="spread">How far it may lie off.</param>
    /// <exception cref="NoSolutionException"><c>estimate.unknown-sheet</c>, <c>estimate.sheet-too-small</c>.</exception>
    public static MaterialLine Of(
        string id, Blank blank, Grain grain, int pieces, SheetPrice price, string subject, Spread spread)
    {
        if (price is not PricePerStockSheet whole)
        {
            var each = spread.Around(blank.MassKg * ((PricePerKg)price).Money);
            return new(id, pieces, pieces * blank.MassKg, null, null, null, each, pieces * each);
        }

        var perSheet = BlanksOn(whole.Sheet, blank, grain, subject);
        var share = spread.Around(whole.Money / perSheet);
        return new(
            id, pieces, pieces * blank.MassKg, whole.Sheet, perSheet, (pieces + perSheet - 1) / perSheet, share, pieces * share);
    }

    private static int BlanksOn(string name, Blank blank, Grain grain, string subject)
    {
        var yields = blank.Stock.Where(stock => stock.Sheet.Name == name).ToArray();
        if (yields.Length == 0)
        {
            throw new NoSolutionException(
                "estimate.unknown-sheet",
                subject + ".sheet",
                $"no stock sheet has this name",
                $"{string.Join(", ", blank.Stock.Select(stock => stock.Sheet.Name).Distinct())}");
        }

        var most = yields.Where(stock => grain == Grain.Unknown || stock.FoldsAlongGrain == (grain == Grain.Along)).Max(stock => stock.Pieces);
        return most > 0
            ? most
            : throw new NoSolutionException(
                "estimate.sheet-too-small",
                subject + ".sheet",
                $"a blank of {Figure.Length(blank.LengthMm)} × {Figure.Length(blank.WidthMm)} does not fit on this sheet",
                $"a sheet that holds the blank, or a price by mass");
    }
}
