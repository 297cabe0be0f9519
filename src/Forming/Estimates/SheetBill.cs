using Forming.Blanks;
using Forming.Jobs;
using Forming.Results;

namespace Forming.Estimates;

/// <summary>Sheet for a number of blanks, and its cost.</summary>
/// <param name="Id"><c>form-sheet</c> or <c>panel-sheet</c>.</param>
/// <param name="Blanks">Blanks.</param>
/// <param name="MassKg">Mass of all blanks together [kg].</param>
/// <param name="Sheet">Name of the stock sheet they are nested on, or null where none is large enough.</param>
/// <param name="BlanksPerSheet">Blanks that one such sheet gives, or null.</param>
/// <param name="Sheets">Whole sheets that are paid for; null where the area used is.</param>
/// <param name="ScrapShare">Share of what is paid for that is not in the blanks, 0 to 1.</param>
/// <param name="Cost">All blanks [money].</param>
public sealed record MaterialLine(
    string Id, int Blanks, double MassKg, string? Sheet, int? BlanksPerSheet, int? Sheets, double ScrapShare, Band Cost);

/// <summary>What sheet costs for any number of like blanks.</summary>
public sealed class SheetBill
{
    /// <summary>Share of the sheet that is scrap where no stock sheet is large enough to nest the blank on: an assumption.</summary>
    public const double ScrapWithoutStock = 0.15;

    private readonly string _id;
    private readonly Blank _blank;
    private readonly SheetPurchase _purchase;
    private readonly Nest[] _nests;

    private SheetBill(string id, Blank blank, SheetPurchase purchase, Nest[] nests) =>
        (_id, _blank, _purchase, _nests) = (id, blank, purchase, nests);

    /// <summary>Nests a blank on stock.</summary>
    /// <param name="id"><c>form-sheet</c> or <c>panel-sheet</c>.</param>
    /// <param name="blank">One blank.</param>
    /// <param name="grain">How its folds have to lie to the rolling direction; where that is not known, whatever gives more blanks.</param>
    /// <param name="purchase">How its sheet is bought.</param>
    /// <param name="subject">Contract path of the price.</param>
    /// <exception cref="NoSolutionException"><c>estimate.unknown-sheet</c>, <c>estimate.sheet-too-small</c>.</exception>
    public static SheetBill Of(string id, Blank blank, Grain grain, SheetPurchase purchase, string subject)
    {
        var name = purchase.OnlySheet;
        var yields = blank.Stock.Where(stock => name is null || stock.Sheet.Name == name).ToArray();
        if (name is not null && yields.Length == 0)
        {
            throw new NoSolutionException(
                "estimate.unknown-sheet",
                subject + ".sheet",
                $"no stock sheet has this name",
                $"{string.Join(", ", blank.Stock.Select(stock => stock.Sheet.Name).Distinct())}");
        }

        Nest[] nests =
        [
            .. yields
                .Where(stock => stock.Pieces > 0 && (grain == Grain.Unknown || stock.FoldsAlongGrain == (grain == Grain.Along)))
                .GroupBy(stock => stock.Sheet)
                .Select(both => new Nest(both.Key, both.Max(stock => stock.Pieces))),
        ];
        return nests.Length > 0 || (name is null && purchase.Buying == SheetBuying.AreaUsed)
            ? new(id, blank, purchase, nests)
            : throw new NoSolutionException(
                "estimate.sheet-too-small",
                subject + (name is null ? ".buy" : ".sheet"),
                $"a blank of {Figure.Length(blank.LengthMm)} × {Figure.Length(blank.WidthMm)} does not fit on this stock",
                $"a stock sheet that holds the blank, or a price by mass for the area used");
    }

    /// <summary>A blank where as many are bought as fill whole sheets [money].</summary>
    public double EachOfMany => _purchase.Buying == SheetBuying.AreaUsed
        ? EachByArea()
        : _nests.Min(nest => MoneyOf(nest) / nest.Blanks);

    /// <summary>The bill for a number of blanks.</summary>
    /// <param name="blanks">How many, at least 1.</param>
    /// <param name="spread">How far the price may be out.</param>
    public MaterialLine For(int blanks, Spread spread)
    {
        var mass = blanks * _blank.MassKg;
        if (_purchase.Buying == SheetBuying.AreaUsed)
        {
            var fullest = Fullest();
            return new(
                _id, blanks, mass, fullest?.Sheet.Name, fullest?.Blanks, null, ScrapShare(fullest), spread.Around(blanks * EachByArea()));
        }

        var best = _nests.MinBy(nest => nest.SheetsFor(blanks) * MoneyOf(nest))!;
        var sheets = best.SheetsFor(blanks);
        return new(
            _id,
            blanks,
            mass,
            best.Sheet.Name,
            best.Blanks,
            sheets,
            Math.Max(0, 1 - (blanks * _blank.AreaMm2 / (sheets * best.AreaMm2))),
            spread.Around(sheets * MoneyOf(best)));
    }

    /// <summary>Share of scrap in use where nobody gave one, or null where it does not count.</summary>
    internal double? FoundScrapShare => _purchase is { Buying: SheetBuying.AreaUsed, ScrapShare: null } ? ScrapShare(Fullest()) : null;

    /// <summary>Whether that share follows from a nest on stock.</summary>
    internal bool IsNested => _nests.Length > 0;

    private double EachByArea()
    {
        var fullest = Fullest();
        var money = _purchase.Price is PricePerStockSheet sheet
            ? sheet.Money / fullest!.AreaMm2 * _blank.AreaMm2
            : ((PricePerKg)_purchase.Price).Money * _blank.MassKg;
        return money / (1 - ScrapShare(fullest));
    }

    private double ScrapShare(Nest? fullest) =>
        _purchase.ScrapShare ?? (fullest is null ? ScrapWithoutStock : Math.Max(0, 1 - UseOf(fullest)));

    private Nest? Fullest() => _nests.MaxBy(UseOf);

    private double UseOf(Nest nest) => nest.Blanks * _blank.AreaMm2 / nest.AreaMm2;

    private double MoneyOf(Nest nest) => _purchase.Price is PricePerStockSheet sheet
        ? sheet.Money
        : ((PricePerKg)_purchase.Price).Money * _blank.MassKg / _blank.AreaMm2 * nest.AreaMm2;

    private sealed record Nest(StockSheet Sheet, int Blanks)
    {
        public double AreaMm2 => Sheet.LengthMm * Sheet.WidthMm;

        public int SheetsFor(int blanks) => (blanks + Blanks - 1) / Blanks;
    }
}
