using System.Text.Json.Nodes;
using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>Fold, check, pull and price: what is done with a plan.</summary>
[Collection(Benches.Name)]
public sealed class BenchTests(Bench bench)
{
    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task Folding_goes_on_by_keyboard_and_remembers_where_it_was(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("fold");
        var steps = (await bench.Answer("/v1/programs", Jobs.CabCorner()))["steps"]!.AsArray();
        await Shows(tab, steps[0]!, steps.Count);
        await tab.Page.Keyboard.PressAsync("Space");
        await Shows(tab, steps[1]!, steps.Count);
        await tab.Page.Keyboard.PressAsync("ArrowRight");
        await Shows(tab, steps[2]!, steps.Count);
        await tab.Page.Keyboard.PressAsync("ArrowLeft");
        await Shows(tab, steps[1]!, steps.Count);
        await tab.Page.ReloadAsync();
        await Shows(tab, steps[1]!, steps.Count);
        await Assertions.Expect(tab.Page.Locator(".step-picture svg[role=img]")).ToBeVisibleAsync();
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Next" }).ClickAsync();
        await Shows(tab, steps[2]!, steps.Count);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_tape_in_inches_reads_marks_and_leaves_the_gauge_in_the_units_of_the_job()
    {
        await using var tab = await bench.Open();
        await tab.At("plan");
        await tab.PlannedBy(() => tab.Page.GetByLabel("my tape is in inches").CheckAsync());
        await tab.GoTo("Fold");
        var job = Jobs.CabCorner();
        job["marks"] = new JsonObject { ["tape"] = "in" };
        var step = (await bench.Answer("/v1/programs", job))["steps"]![0]!;
        Assert.Contains("/", (string)step["gaugeDistanceText"]!, StringComparison.Ordinal);
        var gauge = tab.Page.Locator(".huge dd").First;
        await Assertions.Expect(gauge).ToContainTextAsync("mm");
        await Assertions.Expect(gauge).Not.ToContainTextAsync("/");
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [Trait("Category", "Long")]
    public async Task Corrections_come_with_the_angles(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("check");
        await tab.Page.Locator("#fold-2").FillAsync("20");
        await Assertions.Expect(tab.Page.Locator("#found")).ToHaveTextAsync("Not within its tolerance yet");
        var plan = await bench.Answer("/v1/forms", Jobs.CabCorner());
        var request = Jobs.CabCorner();
        request["measured"] = new JsonObject
        {
            ["angles"] = new JsonArray([.. plan["form"]!["stations"]!.AsArray().Select((station, i) => i == 1 ? JsonValue.Create(20.0) : JsonValue.Create((double)station!["angle"]!))]),
        };
        var found = await bench.Answer("/v1/inspections", request);
        await Assertions.Expect(tab.Part).ToContainTextAsync((string)found["next"]![0]!["text"]!);
    }

    [Fact]
    public async Task An_angle_that_cannot_be_is_named_beside_its_fold()
    {
        await using var tab = await bench.Open();
        tab.ExpectsRefusals = true;
        await tab.At("check");
        await tab.Page.Locator("#fold-3").FillAsync("250");
        await Assertions.Expect(tab.Page.Locator(".field", new() { Has = tab.Page.Locator("#fold-3") }).Locator(".fault")).Not.ToBeEmptyAsync();
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [Trait("Category", "Long")]
    public async Task The_pull_opens_once_its_cautions_are_read(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("pull");
        await Assertions.Expect(tab.Page.Locator(".cautions .danger").First).ToBeVisibleAsync();
        await Assertions.Expect(tab.Page.Locator(".touches")).ToHaveCountAsync(0);
        await tab.Page.GetByText("I have read these").ClickAsync();
        var touches = (await bench.Answer("/v1/forms", Jobs.CabCorner()))["panel"]!["outcome"]!["touches"]!.AsArray();
        await Assertions.Expect(tab.Page.Locator(".touches tbody tr")).ToHaveCountAsync(touches.Count);
        await Assertions.Expect(tab.Page.Locator(".touches tbody tr").First).ToContainTextAsync(((double)touches[0]!["endAngle"]!).ToString("0.0", System.Globalization.CultureInfo.InvariantCulture) + "°");
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [Trait("Category", "Long")]
    public async Task My_rates_price_the_pieces_and_stay_in_the_browser(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("price");
        var request = Jobs.CabCorner();
        request["pieces"] = new JsonArray(2, 30);
        request["rates"] = new JsonObject { ["labour"] = 75 };
        var expected = (await bench.Answer("/v1/estimates", request))["prices"]![1]!["price"]!["likely"]!.GetValue<double>();
        await tab.Page.Locator("#pieces").FillAsync("2, 30");
        await tab.Page.Locator("#rate-labour").FillAsync("75");
        var price = tab.Page.Locator("section[aria-labelledby=prices] tbody tr").Nth(1).Locator("td").First;
        await Assertions.Expect(price).ToContainTextAsync(Math.Round(expected).ToString(System.Globalization.CultureInfo.InvariantCulture));
        await Assertions.Expect(tab.Page.Locator(".way").First).Not.ToBeEmptyAsync();
        await tab.Page.ReloadAsync();
        await Assertions.Expect(tab.Page.Locator("#rate-labour")).ToHaveValueAsync("75");
        await Assertions.Expect(price).ToContainTextAsync(Math.Round(expected).ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    private static async Task Shows(Tab tab, JsonNode step, int count)
    {
        await Assertions.Expect(tab.Page.Locator(".count")).ToContainTextAsync($"Step {step["number"]} of {count}");
        // What is read from afar is the number of the sentence below it.
        var gauge = await tab.Page.Locator(".huge dd").First.TextContentAsync();
        Assert.Equal((double)step["gaugeDistance"]!, double.Parse(gauge!.Replace("mm", ""), System.Globalization.CultureInfo.InvariantCulture), 0.051);
        await Assertions.Expect(tab.Page.Locator(".bench .large")).ToContainTextAsync($"the stop at {gauge.Replace("mm", " mm")}");
        await Assertions.Expect(tab.Page.Locator(".huge dd").Last).ToContainTextAsync(((double)step["stopSetting"]!).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture) + "°");
    }
}
