using Forming.Programs;

namespace Forming.Tests.Programs;

/// <summary>What folds ask of a brake.</summary>
public class FoldLoadTests
{
    [Theory]
    [Published("air-bending-forces.csv")]
    public void Air_bending_takes_the_published_force(
        double factor, double ultimate, double width, double thickness, double opening, double force, double tolerance) =>
        Workshop.Within(tolerance, force, FoldLoad.AirBendForceN(factor, ultimate, width, thickness, opening));

    // Marciniak, Duncan & Hu eq. 6.21 with 330 MPa × 2/√3 at 1.2 mm over 1 m: 137.2 N·m.
    [Fact]
    public void The_leaf_takes_the_fully_plastic_moment() =>
        Workshop.Near(137_177, FoldLoad.PlasticMomentNmm(330, 1000, 1.2), 5e-4);

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
