using CsCheck;
using Forming.Blanks;
using Forming.Estimates;
using Forming.Jobs;
using Forming.Materials;
using Forming.Results;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Estimates;

/// <summary>Sheet by the area used and by whole sheets, nested on stock, by hand.</summary>
public class SheetBillTests
{
    private static readonly Spread Sure = new(1, 1);
    private static readonly StockSheet Small = new("small", 2000, 1000);
    private static readonly StockSheet Large = new("large", 2500, 1250);

    // 400 × 300 mm of 2 mm steel at 7850 kg/m³: 0.12 m², 1.884 kg. On 2000 × 1000 mm five by three, or six by two the other way round: 15,
    // 1.8 m² of 2 m², a tenth left over.
    private static readonly Blank Plate = BlankShape.Rectangle(new(Steel, 2), 400, 300, [Small]);

    private static Material Steel => Of("steel-cr-cs") with { DensityKgPerCubicMetre = 7850 };

    // 3 money a kilogram: 1.884 × 3/0.9 a blank.
    [Fact]
    public void The_area_used_is_paid_with_what_a_full_sheet_leaves_over()
    {
        var line = Bill(Plate, new(new PricePerKg(3))).For(7, Sure);
        Assert.Equal(("small", 15, null), (line.Sheet, line.BlanksPerSheet, line.Sheets));
        Within(1e-12, 0.1, line.ScrapShare);
        Within(1e-9, 7 * 6.28, line.Cost.Likely);
        Within(1e-9, 7 * 1.884, line.MassKg);
    }

    // A quarter lost: 1.884 × 3/0.75 = 7.536.
    [Fact]
    public void The_callers_share_of_scrap_wins() =>
        Within(1e-9, 7.536, Bill(Plate, new(new PricePerKg(3), ScrapShare: 0.25)).For(1, Sure).Cost.Likely);

    // 90 a sheet: 6 a blank by the area used; by whole sheets 90 for 1 to 15, 180 for 16; of those two 4 m² hold 16 × 0.12.
    [Fact]
    public void Whole_sheets_are_paid_for_when_they_are_begun()
    {
        var purchase = new SheetPurchase(new PricePerStockSheet(90, "small"));
        Within(1e-9, 6, Bill(Plate, purchase).For(1, Sure).Cost.Likely);
        var whole = Bill(Plate, purchase with { Buying = SheetBuying.WholeSheets });
        foreach (var (blanks, money) in new[] { (1, 90), (15, 90), (16, 180) })
            Assert.Equal(money, whole.For(blanks, Sure).Cost.Likely);
        var two = whole.For(16, Sure);
        Assert.Equal(2, two.Sheets);
        Within(1e-12, 1 - (1.92 / 4), two.ScrapShare);
        Assert.Equal(6, whole.EachOfMany);
    }

    // By mass: 2 m² weigh 31.4 kg, 94.2 money; 3.125 m² 147.1875, for six by four 24 blanks. 16 blanks: two small for 188.4 or one large.
    [Fact]
    public void The_stock_sheet_that_costs_least_is_taken()
    {
        var blank = BlankShape.Rectangle(new(Steel, 2), 400, 300, [Small, Large]);
        var whole = Bill(blank, new(new PricePerKg(3), SheetBuying.WholeSheets));
        Assert.Equal(("small", 94.2), Rounded(whole.For(15, Sure)));
        Assert.Equal(("large", 147.1875), Rounded(whole.For(16, Sure)));
        Assert.Equal(("large", 24), (whole.For(16, Sure).Sheet, whole.For(16, Sure).BlanksPerSheet!.Value));
        Assert.Equal(("small", 188.4), Rounded(Bill(blank, new(new PricePerKg(3), SheetBuying.WholeSheets, "small")).For(16, Sure)));

        static (string?, double) Rounded(MaterialLine line) => (line.Sheet, Math.Round(line.Cost.Likely, 9));
    }

    // Folds across the grain lie square to the sheet's length. 1100 × 400 mm: 1 × 2 with the length along the sheet, 5 × 0 across it.
    [Fact]
    public void Blanks_are_nested_as_the_grain_asks()
    {
        var blank = BlankShape.Rectangle(new(Steel, 2), 1100, 400, [Small]);
        var purchase = new SheetPurchase(new PricePerStockSheet(90, "small"), SheetBuying.WholeSheets);
        Assert.Equal(2, SheetBill.Of("panel-sheet", blank, Grain.Across, purchase, "rates.panelSheet").For(1, Sure).BlanksPerSheet);
        Assert.Throws<NoSolutionException>(() => SheetBill.Of("panel-sheet", blank, Grain.Along, purchase, "rates.panelSheet"));
    }

    [Fact]
    public void A_blank_that_no_stock_holds_is_cut_to_order_or_refused()
    {
        var blank = BlankShape.Rectangle(new(Steel, 2), 4000, 300, [Small]);
        var line = Bill(blank, new(new PricePerKg(3))).For(1, Sure);
        Assert.Null(line.Sheet);
        Assert.Equal(SheetBill.ScrapWithoutStock, line.ScrapShare);
        Within(1e-9, 18.84 * 3 / 0.85, line.Cost.Likely);
        var refused = Assert.Throws<NoSolutionException>(() => Bill(blank, new(new PricePerKg(3), SheetBuying.WholeSheets)));
        Assert.Equal(("estimate.sheet-too-small", "rates.panelSheet.buy"), (refused.Code, refused.Subject));
    }

    [Fact]
    public void Whole_sheets_never_cost_less_than_the_area_used_nor_more_than_one_sheet_beyond() =>
        Gen.Select(Gen.Double[50, 900], Gen.Double[50, 900], Gen.Int[1, 300]).ForAll((length, width, blanks) =>
        {
            var blank = BlankShape.Rectangle(new(Steel, 2), length, width, [Small]);
            var area = Bill(blank, new(new PricePerStockSheet(90, "small"))).For(blanks, Sure).Cost.Likely;
            var whole = Bill(blank, new(new PricePerStockSheet(90, "small"), SheetBuying.WholeSheets)).For(blanks, Sure).Cost.Likely;
            Assert.InRange(whole, area * (1 - 1e-12), area + 90);
        }, iter: 300);

    private static SheetBill Bill(Blank blank, SheetPurchase purchase) => SheetBill.Of("panel-sheet", blank, Grain.Unknown, purchase, "rates.panelSheet");
}
