using System.Globalization;
using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>Units: the service converts, and reads fractions.</summary>
[Collection(Benches.Name)]
public sealed class UnitsTests(Bench bench)
{
    [Fact]
    [Trait("Category", "Long")]
    public async Task The_switch_gives_the_same_job_in_inches()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        var answer = await tab.PlannedBy(() => tab.Page.Locator("input[name=units][value=in]").CheckAsync());
        Assert.Equal(95 / 25.4, (double)answer["request"]!["panel"]!["curve"]!["radius"]!, 6);
        var metric = await bench.Answer("/v1/forms", Jobs.CabCorner());
        Assert.Equal((double)metric["form"]!["sweep"]!, (double)answer["form"]!["sweep"]!, 4);
        Assert.Equal((double)metric["form"]!["blank"]!["length"]! / 25.4, (double)answer["form"]!["blank"]!["length"]!, 5);
        await tab.GoTo("The plan");
        await Assertions.Expect(tab.Page.Locator(".facts")).ToContainTextAsync("in");
        await tab.GoTo("What I want");
        var back = await tab.PlannedBy(() => tab.Page.Locator("input[name=units][value=mm]").CheckAsync());
        Assert.Equal(95, (double)back["request"]!["panel"]!["curve"]!["radius"]!, 5);
    }

    [Theory]
    [InlineData("6 1/2", 6.5)]
    [InlineData("6-1/2", 6.5)]
    [InlineData("6.5", 6.5)]
    [Trait("Category", "Long")]
    public async Task Inches_are_typed_as_a_tape_shows_them(string text, double inches)
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        await tab.PlannedBy(() => tab.Page.Locator("input[name=units][value=in]").CheckAsync());
        // On the way to it, such as at 6 1/, it is no length yet.
        tab.ExpectsRefusals = true;
        var answer = await tab.PlannedBy(() => tab.Field("/panel/curve/radius").FillAsync(text));
        Assert.Equal(inches, (double)answer["request"]!["panel"]!["curve"]!["radius"]!);
        await Assertions.Expect(tab.Field("/panel/curve/radius")).ToHaveValueAsync(text);
        await tab.Field("/panel/curve/radius").BlurAsync();
        await Assertions.Expect(tab.Field("/panel/curve/radius")).ToHaveValueAsync(text.Contains('/', StringComparison.Ordinal) ? text : inches.ToString(CultureInfo.InvariantCulture));
    }
}
