using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>Pictures of every part for a person to look at: <c>bash tests/FormApi.Page.Tests/pictures</c>.</summary>
[Collection(Benches.Name)]
[Trait("Category", "Slow")]
public sealed class PicturesTests(Bench bench)
{
    // What each part shows last.
    private static readonly (string Part, string Last)[] Parts =
    [
        ("want", ".status svg"), ("sheet", ".status svg"), ("plan", ".plot svg"), ("print", ".paper-room svg"),
        ("fold", ".step-picture svg"), ("check", "#found"), ("pull", ".touches"), ("panel", "#panel-found"), ("price", ".way"),
    ];

    private static string Folder { get; } = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "pictures")).FullName;

    [Theory]
    [InlineData(390, ColorScheme.Light)]
    [InlineData(390, ColorScheme.Dark)]
    [InlineData(1280, ColorScheme.Light)]
    [InlineData(1280, ColorScheme.Dark)]
    [Trait("Category", "Long")]
    public async Task Every_part_is_pictured(int width, ColorScheme scheme)
    {
        await using var tab = await bench.Open(width, scheme);
        foreach (var (part, last) in Parts)
        {
            await tab.At(part);
            if (part == "check")
                await tab.Page.Locator("#fold-2").FillAsync("20");
            else if (part == "pull")
                await tab.Page.Locator(".danger input").CheckAsync();
            else if (part == "panel")
                await Measure(tab);
            await Assertions.Expect(tab.Page.Locator(last).First).ToBeVisibleAsync();
            var path = Path.Combine(Folder, $"{part}-{width}-{scheme.ToString().ToLowerInvariant()}.png");
            await tab.Page.ScreenshotAsync(new() { Path = path, FullPage = true });
            Assert.True(new FileInfo(path).Length > 20_000, path);
        }
    }

    private static async Task Measure(Tab tab)
    {
        await tab.Page.Locator("#panel-sweep").FillAsync("82");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "What it says" }).ClickAsync();
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task The_first_thing_seen_is_pictured()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        await tab.Page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        var path = Path.Combine(Folder, "page.png");
        await tab.Page.ScreenshotAsync(new() { Path = path });
        Assert.InRange(new FileInfo(path).Length, 20_000, 150_000);
    }
}
