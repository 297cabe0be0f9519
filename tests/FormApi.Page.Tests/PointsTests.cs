using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>Measured points: typed, pasted, dragged.</summary>
[Collection(Benches.Name)]
public sealed class PointsTests(Bench bench)
{
    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [Trait("Category", "Long")]
    public async Task A_dragged_point_moves_the_marks_as_the_service_says(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("want");
        var before = await tab.PlannedBy(() => tab.Page.Locator("input[name=kind][value=points]").CheckAsync());
        var point = tab.Page.Locator(".board .point").Nth(4);
        await point.ScrollIntoViewIfNeededAsync();
        var box = (await point.Locator(".dot").BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        var after = await tab.PlannedBy(async () =>
        {
            await tab.Page.Mouse.MoveAsync(x, y);
            await tab.Page.Mouse.DownAsync();
            await tab.Page.Mouse.MoveAsync(x, y + 2, new() { Steps = 2 });
            await tab.Page.Mouse.UpAsync();
        });
        var asked = after["request"]!["panel"]!["curve"]!["points"]!.AsArray();
        Assert.NotEqual(before["request"]!["panel"]!["curve"]!["points"]![4]!.ToJsonString(), asked[4]!.ToJsonString());
        await tab.Page.WaitForTimeoutAsync(400);
        await tab.Planned();

        var typed = await tab.Page.Locator("#points-text").InputValueAsync();
        var request = Jobs.CabCorner();
        request["panel"]!["curve"] = new JsonObject
        {
            ["type"] = "points",
            ["points"] = new JsonArray([.. typed.Split('\n').Select(line => new JsonArray([.. line.Split("  ").Select(text => JsonValue.Create(Bench.Number(text)))]))]),
            ["tolerance"] = 0.3,
        };
        var expected = await bench.Answer("/v1/forms", request);
        await tab.GoTo("The plan");
        var marks = await tab.Page.Locator(".stations tbody tr td:nth-of-type(1)").AllInnerTextsAsync();
        Assert.Equal(expected["form"]!["stations"]!.AsArray().Select(station => (string)station!["markText"]!), marks);
        Assert.NotEqual(before["form"]!["stations"]!.ToJsonString(), expected["form"]!["stations"]!.ToJsonString());
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_pasted_table_is_planned()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        await tab.PlannedBy(() => tab.Page.Locator("input[name=kind][value=points]").CheckAsync());
        string[] rows = [.. Enumerable.Range(0, 9).Select(i => i * Math.PI / 16).Select(turn => string.Create(CultureInfo.InvariantCulture, $"{120 * Math.Sin(turn):0.00}\t{120 * (1 - Math.Cos(turn)):0.00}"))];
        var answer = await tab.PlannedBy(() => tab.Page.Locator("#points-text").FillAsync(string.Join("\n", rows)));
        Assert.Equal(9, answer["request"]!["panel"]!["curve"]!["points"]!.AsArray().Count);
        await Assertions.Expect(tab.Page.Locator(".board .point")).ToHaveCountAsync(9);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_point_is_moved_by_the_arrow_keys()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        await tab.PlannedBy(() => tab.Page.Locator("input[name=kind][value=points]").CheckAsync());
        var answer = await tab.PlannedBy(() => tab.Page.Locator(".board .point").Nth(3).PressAsync("ArrowUp"));
        Assert.Equal(20.6, (double)answer["request"]!["panel"]!["curve"]!["points"]![3]![1]!, 6);
    }
}
