using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>What I want: from a few typed values to a picture and a verdict.</summary>
[Collection(Benches.Name)]
public sealed class WantTests(Bench bench)
{
    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task It_opens_with_a_finished_example(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("");
        await Assertions.Expect(tab.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("What I want");
        await Assertions.Expect(tab.Field("/panel/curve/radius")).ToHaveValueAsync("95");
        await Assertions.Expect(tab.Verdict).ToContainTextAsync("7 folds");
        await Assertions.Expect(tab.Page.Locator(".status svg[role=img]")).ToBeVisibleAsync();
        Assert.True(await tab.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"), "It is wider than the screen.");
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_typed_radius_is_planned_as_the_service_plans_it()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        var answer = await tab.PlannedBy(() => tab.Field("/panel/curve/radius").FillAsync("120"));
        Assert.Equal(120, (double)answer["request"]!["panel"]!["curve"]!["radius"]!);
        await tab.GoTo("The plan");
        var marks = await tab.Page.Locator(".stations tbody tr td:nth-of-type(1)").AllInnerTextsAsync();
        Assert.Equal(answer["form"]!["stations"]!.AsArray().Select(station => (string)station!["markText"]!), marks);
    }

    [Fact]
    public async Task A_bad_value_is_named_beside_its_field()
    {
        await using var tab = await bench.Open();
        tab.ExpectsRefusals = true;
        await tab.At("want");
        await tab.Field("/panel/curve/radius").FillAsync("-3");
        var field = tab.Page.Locator(".field", new() { Has = tab.Field("/panel/curve/radius") });
        await Assertions.Expect(field.Locator(".fault")).ToContainTextAsync("0.5");
        await Assertions.Expect(tab.Field("/panel/curve/radius")).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(tab.Verdict).ToContainTextAsync("No plan yet");
        await tab.Field("/panel/curve/radius").FillAsync("95");
        await Assertions.Expect(field.Locator(".fault")).ToHaveCountAsync(0);
        await Assertions.Expect(tab.Verdict).ToContainTextAsync("7 folds");
    }
}
