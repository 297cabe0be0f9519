using System.Text.Json.Nodes;

namespace FormApi.Page.Tests;

/// <summary>An arc by whatever a person could measure of it.</summary>
[Collection(Benches.Name)]
public sealed class ArcTests(Bench bench)
{
    [Fact]
    [Trait("Category", "Long")]
    public async Task Chord_and_rise_are_an_arc_too()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        await tab.Page.Locator("#measure-0").SelectOptionAsync("chord");
        await tab.Page.Locator("#measure-1").SelectOptionAsync("rise");
        await tab.Field("/panel/curve/chord").FillAsync("128");
        var answer = await tab.PlannedBy(() => tab.Field("/panel/curve/rise").FillAsync("25"));
        // The radius of an arc is (chord²/4 + rise²) / (2 rise).
        Assert.Equal(((128.0 * 128 / 4) + (25 * 25)) / 50, (double)answer["request"]!["panel"]!["curve"]!["radius"]!, 6);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task Three_points_are_an_arc_too()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        var answer = await tab.PlannedBy(() => tab.Page.Locator("input[name=arc-by][value=points]").CheckAsync());
        Assert.True((double)answer["request"]!["panel"]!["curve"]!["radius"]! > 0);
        var moved = await tab.PlannedBy(() => tab.Page.GetByLabel("point 2, up").FillAsync("24"));
        // The address follows the job a moment later and draws the page anew: what is typed stays.
        await tab.Page.WaitForURLAsync(address => address.Contains('/', StringComparison.Ordinal));
        Assert.Equal("24", await tab.Page.GetByLabel("point 2, up").InputValueAsync());
        Assert.NotEqual((double)answer["request"]!["panel"]!["curve"]!["radius"]!, (double)moved["request"]!["panel"]!["curve"]!["radius"]!);
    }

    [Theory]
    [InlineData("progressive", "/panel/curve/endRadius", "300")]
    [InlineData("taper", "/panel/curve/far/radius", "120")]
    [Trait("Category", "Long")]
    public async Task Opening_radii_and_cones_are_planned(string kind, string place, string value)
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        await tab.PlannedBy(() => tab.Page.Locator($"input[name=kind][value={kind}]").CheckAsync());
        var answer = await tab.PlannedBy(() => tab.Field(place).FillAsync(value));
        JsonNode? found = answer["request"];
        foreach (var step in place.Split('/').Skip(1))
            found = found![step];
        Assert.Equal(Bench.Number(value), (double)found!);
    }
}
