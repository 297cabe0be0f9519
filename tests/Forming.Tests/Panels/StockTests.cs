using Forming.Blanks;

namespace Forming.Tests.Panels;

/// <summary>How many blanks a stock sheet gives.</summary>
public class StockTests
{
    private static readonly StockSheet Sheet = new("2000 × 1000", 2000, 1000);

    // 370 × 300 on 2000 × 1000: folds across the grain 5 × 3 = 15; along it 300 along the sheet: 6 × 2 = 12.
    [Fact]
    public void Blanks_are_counted_side_by_side_in_both_grain_directions()
    {
        var yields = Stock.Count([Sheet], 370, 300);
        Assert.Equal(2, yields.Count);
        Assert.False(yields[0].FoldsAlongGrain);
        Assert.Equal(15, yields[0].Pieces);
        Workshop.Near(15 * 370 * 300 / 2e6, yields[0].Use, 1e-12);
        Assert.True(yields[1].FoldsAlongGrain);
        Assert.Equal(12, yields[1].Pieces);
    }

    [Fact]
    public void A_blank_as_long_as_the_sheet_fits() => Assert.Equal(10, Stock.Count([Sheet], 2000, 1000.0 / 10)[0].Pieces);

    [Fact]
    public void A_blank_longer_than_the_sheet_gives_none()
    {
        Assert.Equal(0, Stock.Count([Sheet], 2001, 100)[0].Pieces);
        Assert.Equal(0, Stock.Count([Sheet], 2001, 100)[0].Use);
    }

    [Fact]
    public void Every_sheet_the_caller_holds_is_counted_both_ways() =>
        Assert.Equal(2 * StockSheet.Defaults.Count, Stock.Count(StockSheet.Defaults, 300, 200).Count);

    [Fact]
    public void No_more_of_a_sheet_is_used_than_there_is() =>
        Assert.All(Stock.Count(StockSheet.Defaults, 123.4, 77.7), yield => Assert.InRange(yield.Use, 0, 1));
}
