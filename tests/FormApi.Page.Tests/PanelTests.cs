using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>The panel: what was measured on it goes into the form, and into the next plan.</summary>
[Collection(Benches.Name)]
public sealed class PanelTests(Bench bench)
{
    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [Trait("Category", "Long")]
    public async Task A_panel_that_came_off_open_corrects_the_form_and_teaches_the_next_plan(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("panel");
        await tab.Page.Locator("#panel-sweep").FillAsync("82");
        await tab.Page.Locator("#panel-radius").FillAsync("98");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "What it says" }).ClickAsync();
        var request = Jobs.CabCorner();
        request["measured"] = new JsonObject { ["sweep"] = 82, ["radius"] = 98 };
        var found = await bench.Answer("/v1/panels/corrections", request);
        await Assertions.Expect(tab.Part).ToContainTextAsync((string)found["next"]![0]!["text"]!);
        await Assertions.Expect(tab.Part).ToContainTextAsync((string)found["secondPull"]!["text"]!);
        var answer = await tab.PlannedBy(() => tab.Page.GetByRole(AriaRole.Button, new() { Name = "Plan the next one with this sheet" }).ClickAsync());
        Assert.Equal(
            (double)found["paste"]!["panel"]!["springback"]!["effectiveYield"]!,
            (double)answer["request"]!["panel"]!["springback"]!["effectiveYield"]!, 6);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task Points_along_a_template_say_as_much()
    {
        await using var tab = await bench.Open();
        await tab.At("panel");
        await tab.Page.GetByText("Points of a template instead").ClickAsync();
        // A flat of 30 mm, and from there an arc of 98 mm inside through 80°.
        double[][] points = [[-30, 0], [-15, 0], .. Enumerable.Range(0, 9).Select(i => i * Math.PI / 18).Select(turn =>
            (double[])[Math.Round(98 * Math.Sin(turn), 1), Math.Round(98 * (1 - Math.Cos(turn)), 1)])];
        await tab.Page.Locator("#panel-points").FillAsync(string.Join('\n', points.Select(point => FormattableString.Invariant($"{point[0]} {point[1]}"))));
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "What it says" }).ClickAsync();
        var request = Jobs.CabCorner();
        request["measured"] = new JsonObject { ["points"] = new JsonArray([.. points.Select(point => new JsonArray(point[0], point[1]))]) };
        var found = await bench.Answer("/v1/panels/corrections", request);
        await Assertions.Expect(tab.Part).ToContainTextAsync((string)found["next"]![0]!["text"]!);
        await Assertions.Expect(tab.Part).ToContainTextAsync((string)found["secondPull"]!["text"]!);
    }

    [Fact]
    public async Task A_sweep_that_cannot_be_is_named_beside_its_field()
    {
        await using var tab = await bench.Open();
        tab.ExpectsRefusals = true;
        await tab.At("panel");
        await tab.Page.Locator("#panel-sweep").FillAsync("nearly 80");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "What it says" }).ClickAsync();
        await Assertions.Expect(tab.Page.Locator(".field", new() { Has = tab.Page.Locator("#panel-sweep") }).Locator(".fault")).Not.ToBeEmptyAsync();
    }
}
