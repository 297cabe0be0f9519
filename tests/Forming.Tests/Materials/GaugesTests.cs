using Forming.Materials;
using Forming.Results;

namespace Forming.Tests.Materials;

public class GaugesTests
{
    [Theory]
    [InlineData("manufacturers-standard", 28)]
    [InlineData("galvanized", 23)]
    [InlineData("us-standard", 28)]
    [InlineData("brown-sharpe", 28)]
    public void Each_system_lists_what_was_published_and_no_more(string systemId, int count)
    {
        Assert.True(Gauges.TryFind(systemId, out var system));
        var gauges = system.Thicknesses.Select(thickness => thickness.Gauge).ToArray();
        Assert.Equal(Enumerable.Range(31 - count, count), gauges);
        Assert.Equal(4, Gauges.Systems.Count);
    }

    [Theory]
    [InlineData("manufacturers-standard", 16, 0.0598)]
    [InlineData("manufacturers-standard", 20, 0.0359)]
    [InlineData("galvanized", 20, 0.0396)]
    [InlineData("us-standard", 16, 0.0625)]
    [InlineData("us-standard", 20, 0.0375)]
    [InlineData("brown-sharpe", 16, 0.0508)]
    [InlineData("brown-sharpe", 20, 0.0320)]
    public void The_same_number_is_another_thickness_in_another_system(string systemId, int gauge, double inch)
    {
        Assert.True(Gauges.TryThickness(systemId, gauge, out var millimetres));
        Assert.Equal(inch * 25.4, millimetres, 1e-12);
    }

    [Fact]
    public void An_inch_is_25_4_mm_without_a_rounding_on_the_way()
    {
        Assert.True(Gauges.TryThickness("manufacturers-standard", 20, out var millimetres));
        Assert.Equal(0.91186, millimetres);
    }

    [Fact]
    public void Gauge_36_of_Brown_and_Sharpe_is_five_thousandths_of_an_inch() =>
        Assert.Equal(0.0050, GaugeLaw.BrownSharpe(36));

    [Fact]
    public void Gauge_0000_of_Brown_and_Sharpe_is_0_46_inch() =>
        Assert.Equal(0.46, GaugeLaw.BrownSharpe(-3), 1e-15);

    [Fact]
    public void Successive_gauges_of_Brown_and_Sharpe_differ_by_the_39th_root_of_92()
    {
        for (var gauge = 0; gauge < 40; gauge++)
            Assert.Equal(1.1229322, GaugeLaw.BrownSharpe(gauge) / GaugeLaw.BrownSharpe(gauge + 1), 5e-8);
    }

    [Fact]
    public void Ten_gauge_steel_weighs_5_625_pounds_a_square_foot() =>
        Assert.Equal(5.625 / 41.82, GaugeLaw.ManufacturersStandard(90), 1e-15);

    [Fact]
    public void Zinc_makes_every_gauge_thicker()
    {
        Assert.True(Gauges.TryFind("galvanized", out var zinc));
        foreach (var coated in zinc.Thicknesses)
        {
            Assert.True(Gauges.TryThickness("manufacturers-standard", coated.Gauge, out var bare));
            Assert.True(coated.Millimetres > bare);
        }
    }

    [Fact]
    public void A_higher_number_is_a_thinner_sheet()
    {
        foreach (var system in Gauges.Systems)
        {
            var thicknesses = system.Thicknesses.Select(thickness => thickness.Inch).ToArray();
            Assert.Equal(thicknesses.OrderDescending(), thicknesses);
            Assert.Equal(thicknesses.Distinct().Count(), thicknesses.Length);
        }
    }

    [Theory]
    [InlineData("galvanized", 7)]
    [InlineData("us-standard", 31)]
    [InlineData("brown-sharpe", 0)]
    [InlineData("birmingham", 16)]
    public void What_was_not_published_is_not_answered(string systemId, int gauge)
    {
        Assert.False(Gauges.TryThickness(systemId, gauge, out var millimetres));
        Assert.Equal(0, millimetres);
    }

    [Fact]
    public void Every_system_and_every_thickness_names_a_known_source()
    {
        foreach (var system in Gauges.Systems)
        {
            Assert.Equal(SourceCatalog.Find(system.Source).Status, system.Status);
            Assert.All(system.Thicknesses, thickness => SourceCatalog.Find(thickness.Source));
        }
    }

    [Fact]
    public void The_statute_was_read_for_gauges_3_to_22_only()
    {
        Assert.True(Gauges.TryFind("us-standard", out var system));
        Assert.Equal(Status.Published, system.Status);
        Assert.All(system.Thicknesses, thickness => Assert.Equal(thickness.Gauge <= 22, thickness.Source == "usc-15-206"));
    }
}
