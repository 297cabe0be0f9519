using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>The plan: checks with what cures them, marks on the person's own tape, and other counts of folds.</summary>
[Collection(Benches.Name)]
public sealed class PlanTests(Bench bench)
{
    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task A_remedy_that_is_pressed_clears_its_check(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("plan");
        var check = tab.Page.Locator(".checks > li", new() { Has = tab.Page.GetByRole(AriaRole.Button) }).First;
        var id = (await check.GetAttributeAsync("data-check"))!;
        var answer = await tab.PlannedBy(() => check.GetByRole(AriaRole.Button).ClickAsync());
        Assert.Equal("pass", (string)answer["checks"]!.AsArray().Single(one => (string)one!["id"]! == id)!["verdict"]!);
        await Assertions.Expect(tab.Page.Locator($"[data-check='{id}']")).ToHaveCountAsync(0);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task Inches_are_marked_in_fractions()
    {
        await using var tab = await bench.Open();
        await tab.At("plan");
        var answer = await tab.PlannedBy(() => tab.Page.GetByText("my tape is in inches").ClickAsync());
        var marks = await tab.Page.Locator(".stations tbody tr td:nth-of-type(1)").AllInnerTextsAsync();
        Assert.Equal(answer["form"]!["stations"]!.AsArray().Select(station => (string)station!["markText"]!), marks);
        Assert.Contains(marks, mark => mark.Contains('/', StringComparison.Ordinal));
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task Another_count_of_folds_is_chosen_by_pressing_it()
    {
        await using var tab = await bench.Open();
        await tab.At("plan");
        await Assertions.Expect(tab.Page.Locator(".plot svg")).ToHaveAttributeAsync("aria-label", new System.Text.RegularExpressions.Regex("10 folds: ripple .* minutes"));
        var fixedAtNine = await tab.PlannedBy(() => tab.Page.Locator(".mark-point[data-key='9']").ClickAsync());
        Assert.Equal(9, (int)fixedAtNine["form"]!["folds"]!);
        var answer = await tab.PlannedBy(() => tab.Page.Locator("input[name=folds][value='10']").CheckAsync());
        Assert.Equal(10, (int)answer["form"]!["folds"]!);
        await Assertions.Expect(tab.Page.Locator(".stations tbody tr")).ToHaveCountAsync(10);
    }

    [Fact]
    public async Task The_plan_on_the_screen_is_the_plan_of_the_service()
    {
        await using var tab = await bench.Open();
        await tab.At("plan");
        var answer = await bench.Answer("/v1/forms", Jobs.CabCorner());
        await Assertions.Expect(tab.Page.Locator(".figures dd").First).ToContainTextAsync(((double)answer["panel"]!["outcome"]!["radius"]!).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture));
        await Assertions.Expect(tab.Page.Locator(".facts")).ToContainTextAsync($"{answer["form"]!["blank"]!["lengthText"]} × {answer["form"]!["blank"]!["widthText"]} mm");
        foreach (var step in answer["next"]!.AsArray())
            await Assertions.Expect(tab.Page.Locator(".next")).ToContainTextAsync((string)step!["text"]!);
    }
}
