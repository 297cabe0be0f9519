using Forming.Programs;

namespace Forming.Tests.Programs;

/// <summary>What folds ask of a brake.</summary>
public class FoldLoadTests
{
    // The same sheet as the rating uses all of it; half the thickness a quarter.
    [Fact]
    public void Capacity_goes_with_strength_and_the_square_of_thickness()
    {
        var part = Parts.Even(90, 90, 9);
        Assert.Equal(1, FoldLoad.UseOfCapacity(part, Parts.Leaf with { Capacity = new(2, 330) })!.Value, 12);
        Assert.Equal(0.25, FoldLoad.UseOfCapacity(part, Parts.Leaf with { Capacity = new(4, 330) })!.Value, 12);
        Assert.Null(FoldLoad.UseOfCapacity(part, Parts.Leaf));
    }

    [Theory]
    [InlineData(1.5, 9)]
    [InlineData(2.5, 15)]
    [InlineData(3, 24)]
    [InlineData(10, 100)]
    [InlineData(12, 144)]
    public void The_die_opens_by_the_trades_multiples_of_the_thickness(double thickness, double opening) =>
        Assert.Equal(opening, Parts.Press.DieOpeningFor(thickness), 12);
}
