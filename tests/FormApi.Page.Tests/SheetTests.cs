using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>My sheet: as the merchant names it, by thickness or gauge, with what a strip of it taught.</summary>
[Collection(Benches.Name)]
public sealed class SheetTests(Bench bench)
{
    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [Trait("Category", "Long")]
    public async Task A_sheet_goes_by_the_name_that_its_merchant_writes(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("sheet");
        var answer = await tab.PlannedBy(() => tab.Page.Locator("#panel-metal").FillAsync("1.4301"));
        Assert.Equal("ss-304", (string)answer["request"]!["panel"]!["material"]!["id"]!);
        await tab.Page.Locator("#panel-metal").BlurAsync();
        await Assertions.Expect(tab.Page.Locator("#panel-metal")).ToHaveValueAsync("Stainless 304, annealed");
    }

    [Fact]
    public async Task A_gauge_takes_the_place_of_the_thickness()
    {
        await using var tab = await bench.Open();
        await tab.At("sheet");
        await tab.PlannedBy(() => tab.Page.Locator("input[name=panel-by][value=gauge]").CheckAsync());
        var answer = await tab.PlannedBy(() => tab.Page.Locator("#panel-gauge").SelectOptionAsync("14"));
        Assert.Equal(14, (int)answer["request"]!["panel"]!["gauge"]!);
        Assert.Null(answer["request"]!["panel"]!["thickness"]);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_bent_strip_goes_into_the_plan()
    {
        await using var tab = await bench.Open();
        await tab.At("sheet");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "I bent a strip" }).ClickAsync();
        await tab.Page.Locator("#bar-0").FillAsync("60");
        await tab.Page.Locator("#left-0").FillAsync("98.5");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "What it says" }).ClickAsync();
        var answer = await tab.PlannedBy(() => tab.Page.GetByRole(AriaRole.Button, new() { Name = "Use it in the plan" }).ClickAsync());
        Assert.InRange((double)answer["request"]!["panel"]!["springback"]!["effectiveYield"]!, 100, 400);
        await Assertions.Expect(tab.Page.GetByText("A strip’s springback is in this plan.")).ToBeVisibleAsync();
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task My_own_brake_is_kept_and_goes_into_a_file()
    {
        await using var tab = await bench.Open();
        await tab.At("sheet");
        await tab.PlannedBy(() => tab.Field("/brake/stopResolution").FillAsync("0.25"));
        await tab.Page.GetByText("Kept brakes").ClickAsync();
        await tab.Page.Locator("#name-brakes").FillAsync("Old leaf");
        await tab.Page.Locator("details", new() { HasText = "Kept brakes" }).GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await tab.PlannedBy(() => tab.Field("/brake/stopResolution").FillAsync("1"));
        var answer = await tab.PlannedBy(() => tab.Page.GetByRole(AriaRole.Button, new() { Name = "Old leaf", Exact = true }).ClickAsync());
        Assert.Equal(0.25, (double)answer["request"]!["brake"]!["stopResolution"]!);
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Jobs" }).ClickAsync();
        var file = await tab.Page.RunAndWaitForDownloadAsync(() => tab.Page.GetByRole(AriaRole.Button, new() { Name = "Save as a file" }).ClickAsync());
        var text = await File.ReadAllTextAsync(await file.PathAsync());
        Assert.Contains("Old leaf", text, StringComparison.Ordinal);

        await using var other = await bench.Open();
        await other.At("sheet");
        await other.Page.GetByRole(AriaRole.Button, new() { Name = "Jobs" }).ClickAsync();
        await other.Page.Locator("input[type=file]").SetInputFilesAsync(new FilePayload { Name = "bench.json", MimeType = "application/json", Buffer = System.Text.Encoding.UTF8.GetBytes(text) });
        await Assertions.Expect(other.Page.GetByText("Taken.")).ToBeVisibleAsync();
        await other.Page.Keyboard.PressAsync("Escape");
        await other.Page.GetByText("Kept brakes (1)").ClickAsync();
        await Assertions.Expect(other.Page.GetByRole(AriaRole.Button, new() { Name = "Old leaf", Exact = true })).ToBeVisibleAsync();
    }
}
