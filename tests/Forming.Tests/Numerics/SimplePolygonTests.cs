using Forming.Numerics;

namespace Forming.Tests.Numerics;

public class SimplePolygonTests
{
    private static readonly Point[] Square = [new(0, 0), new(4, 0), new(4, 4), new(0, 4)];

    [Fact]
    public void A_square_either_way_round_is_simple()
    {
        Assert.Null(SimplePolygon.FirstRepeated(Square));
        Assert.Null(SimplePolygon.FirstCrossing(Square));
        Assert.Null(SimplePolygon.FirstCrossing([.. Square.Reverse()]));
    }

    [Fact]
    public void A_corner_on_a_straight_edge_does_no_harm() =>
        Assert.Null(SimplePolygon.FirstCrossing([new(0, 0), new(2, 0), new(4, 0), new(4, 4), new(0, 4)]));

    [Fact]
    public void A_bow_tie_crosses() =>
        Assert.Equal((0, 2), SimplePolygon.FirstCrossing([new(0, 0), new(4, 4), new(4, 0), new(0, 4)]));

    [Fact]
    public void A_corner_that_touches_another_edge_crosses() =>
        Assert.Equal((0, 3), SimplePolygon.FirstCrossing([new(0, 0), new(4, 0), new(4, 4), new(2, 4), new(2, 0), new(0, 4)]));

    [Theory]
    [InlineData(2, 0)]
    [InlineData(-2, 0)]
    public void An_edge_back_on_itself_crosses(double x, double y) =>
        Assert.NotNull(SimplePolygon.FirstCrossing([new(0, 0), new(4, 0), new(x, y)]));

    [Fact]
    public void A_corner_twice_in_a_row_is_found_even_where_the_outline_closes()
    {
        Assert.Equal(2, SimplePolygon.FirstRepeated([new(0, 0), new(4, 0), new(4, 0), new(0, 4)]));
        Assert.Equal(0, SimplePolygon.FirstRepeated([new(0, 0), new(4, 0), new(0, 4), new(0, 0)]));
    }
}
