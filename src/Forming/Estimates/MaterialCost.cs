using Forming.Blanks;
using Forming.Jobs;
using Forming.Results;

namespace Forming.Estimates;

/// <summary>Sheet for forms or panels, and its cost.</summary>
/// <param name="Id"><c>form-sheet</c> or <c>panel-sheet</c>.</param>
/// <param name="Pieces">Blanks.</param>
/// <param name="MassKg">Mass of all blanks together [kg].</param>
/// <param name="Sheet">Name of the stock sheet they are priced by, or null where they are priced by mass.</param>
/// <param name="BlanksPerSheet">Blanks that one such sheet gives, or null.</param>
/// <param name="Sheets">Whole sheets that hold all blanks, or null.</param>
/// <param name="EachCost">One blank [money].</param>
/// <param name="Cost">All blanks [money].</param>
public sealed record MaterialLine(
    string Id, int Pieces, double MassKg, string? Sheet, int? BlanksPerSheet, int? Sheets, Band EachCost, Band Cost);

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

        var most = yields.Where(stock => grain == Grain.Unknown || stock.FoldsAlongGrain == (grain == Grain.Along))
            .Max(stock => stock.Pieces);
        return most > 0
            ? most
            : throw new NoSolutionException(
                "estimate.sheet-too-small",
                subject + ".sheet",
                $"a blank of {Figure.Length(blank.LengthMm)} × {Figure.Length(blank.WidthMm)} does not fit on this sheet",
                $"a sheet that holds the blank, or a price by mass");
    }
}

/// <summary>Lengths of edges of a flat blank.</summary>
internal static class BlankEdges
{
    /// <summary>All round [mm].</summary>
    /// <param name="blank">The blank.</param>
    public static double RoundMm(Blank blank)
    {
        var outline = blank.Outline;
        double sum = 0;
        for (var i = 1; i < outline.Count; i++)
            sum += (outline[i] - outline[i - 1]).Length;
        return sum;
    }

    /// <summary>Both edges along the folds, where a panel is trimmed [mm].</summary>
    /// <param name="blank">The blank; its outline runs along the near edge and comes back along the far one, point for point.</param>
    public static double EndsMm(Blank blank)
    {
        var outline = blank.Outline;
        var half = (outline.Count - 1) / 2;
        return (outline[0] - outline[^2]).Length + (outline[half - 1] - outline[half]).Length;
    }
}
