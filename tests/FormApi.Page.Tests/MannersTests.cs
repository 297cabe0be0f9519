using System.Diagnostics;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit.Abstractions;

namespace FormApi.Page.Tests;

/// <summary>What holds for every part: readable by everybody, light, fast, quiet, and open to who has the key.</summary>
[Collection(Benches.Name)]
public sealed class MannersTests(Bench bench, ITestOutputHelper output)
{
    private const int MostBytes = 300_000;

    // A busy machine delays one load or another, which says nothing of the page: the quickest of a few counts.
    private const int MostLoads = 12;
    private const double QuickMilliseconds = 1000;
    private const double RedrawnMilliseconds = 100;

    private static readonly string[] Parts = ["What I want", "My sheet", "The plan", "Print", "Fold", "Check the form", "Pull", "The panel", "Price"];

    [Theory]
    [InlineData(ColorScheme.Light, 1280)]
    [InlineData(ColorScheme.Dark, 390)]
    [Trait("Category", "Long")]
    public async Task Every_part_is_accessible_and_no_wider_than_the_screen(ColorScheme scheme, int width)
    {
        await using var tab = await bench.Open(width, scheme);
        await tab.At("want");
        foreach (var part in Parts)
        {
            await tab.GoTo(part);
            await Assertions.Expect(tab.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(part);
            if (part == "Pull")
                await tab.Page.GetByText("I have read these").ClickAsync();
            if (part == "Fold")
                await Assertions.Expect(tab.Page.Locator(".step-picture svg")).ToBeVisibleAsync();
            if (part == "Price")
                await Assertions.Expect(tab.Page.Locator(".way").First).ToBeVisibleAsync();
            var found = await tab.Page.RunAxe(new AxeRunOptions { RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] } });
            Assert.True(found.Violations.Length == 0, part + ": " + string.Join("; ", found.Violations.Select(one => $"{one.Id} at {string.Join(", ", one.Nodes.Select(node => node.Html))}")));
            Assert.True(await tab.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= innerWidth"), $"{part} is wider than the screen.");
            var small = await tab.Page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll("button, select, input, summary, nav a, .choice label, .onward a, [role=button]")]
                  .map(one => [one, (one.type === "checkbox" || one.type === "radio" || one.type === "file" ? one.closest("label") : one.closest(".box") ?? one).getBoundingClientRect()])
                  .filter(([one, box]) => box.width > 0 && box.height > 0 && (box.height < 43.5 || box.width < 43.5) && !one.matches("p button.plain"))
                  .map(([one, box]) => `${one.outerHTML.slice(0, 120)} ${box.width}x${box.height}`)
                """);
            Assert.True(small.Length == 0 || width > 600, part + ": too small to touch: " + string.Join("; ", small));
        }
    }

    [Fact]
    public async Task The_first_load_is_light_and_quick()
    {
        var quickest = double.MaxValue;
        long bytes = 0;
        for (var i = 0; i < MostLoads && quickest >= QuickMilliseconds; i++)
        {
            await using var tab = await bench.Open();
            bytes = 0;
            tab.Page.Response += async (_, response) =>
            {
                var sizes = await response.Request.SizesAsync();
                Interlocked.Add(ref bytes, sizes.ResponseBodySize);
            };
            var watch = Stopwatch.StartNew();
            await tab.Page.GotoAsync(bench.Address.ToString());
            await Assertions.Expect(tab.Page.Locator(".status svg[role=img]")).ToBeVisibleAsync();
            quickest = Math.Min(quickest, watch.Elapsed.TotalMilliseconds);
            await tab.Planned();
        }

        Assert.InRange(bytes, 10_000, MostBytes);
        Assert.True(quickest < QuickMilliseconds, $"{quickest} ms");
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_typed_radius_is_drawn_while_it_is_typed()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        var milliseconds = await tab.Page.EvaluateAsync<double[]>("""
            async () => {
              const field = document.querySelector("[data-pointer='/panel/curve/radius']"), taken = [];
              const drawn = () => document.querySelector(".status svg[role=img]").outerHTML;
              for (let radius = 90; radius < 110; radius++) {
                const before = drawn(), from = performance.now();
                field.value = String(radius + 0.5);
                field.dispatchEvent(new Event("input", { bubbles: true }));
                while (drawn() === before) await new Promise(requestAnimationFrame);
                taken.push(performance.now() - from);
                while (document.documentElement.dataset.busy === "yes") await new Promise(requestAnimationFrame);
              }
              return taken.sort((a, b) => a - b);
            }
            """);
        output.WriteLine($"{milliseconds[0]:0} to {milliseconds[^1]:0} ms, median {milliseconds[milliseconds.Length / 2]:0}");
        Assert.InRange(milliseconds[0], 0, RedrawnMilliseconds);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task Nothing_is_asked_of_anybody_else()
    {
        await using var tab = await bench.Open();
        var others = new List<string>();
        tab.Page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(bench.Address.ToString(), StringComparison.Ordinal) && !request.Url.StartsWith("blob:", StringComparison.Ordinal))
                others.Add(request.Url);
        };
        await tab.At("want");
        foreach (var part in Parts)
        {
            await tab.GoTo(part);
            await tab.Planned();
        }

        Assert.Empty(others);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task One_call_at_a_time_is_under_way_and_the_newest_wins()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        int under = 0, most = 0;
        tab.Page.Request += (_, request) => most = Math.Max(most, IsPlan(request) ? ++under : under);
        tab.Page.RequestFinished += (_, request) => under -= IsPlan(request) ? 1 : 0;
        tab.ExpectsRefusals = true;
        await tab.Field("/panel/curve/radius").PressSequentiallyAsync("0", new() { Delay = 10 });
        await tab.Field("/panel/curve/radius").FillAsync("");
        await tab.Field("/panel/curve/radius").PressSequentiallyAsync("137.25", new() { Delay = 15 });
        await tab.Planned();
        await tab.GoTo("The plan");
        Assert.Equal(1, most);
        await Assertions.Expect(tab.Page.Locator(".status svg[role=img]")).ToContainTextAsync("R 137.25");
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_service_with_keys_is_asked_with_the_key_that_the_person_gives()
    {
        const string key = "bench-key";
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(key)));
        var (service, address) = Bench.Serve(("Access:Keys:0:Name", "bench"), ("Access:Keys:0:Sha256", hash));
        await using var closing = service;
        await using var opened = await bench.Open();
        await using var tab = new Tab(opened.Page, address) { ExpectsRefusals = true };
        opened.ExpectsRefusals = true;
        await tab.Page.GotoAsync(address.ToString());
        await tab.Page.Locator("#key").FillAsync("wrong");
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Open", Exact = true }).ClickAsync();
        await Assertions.Expect(tab.Page.GetByText("That key does not open it.")).ToBeVisibleAsync();
        await tab.Page.Locator("#key").FillAsync(key);
        await tab.Page.GetByRole(AriaRole.Button, new() { Name = "Open", Exact = true }).ClickAsync();
        await Assertions.Expect(tab.Verdict).ToContainTextAsync("7 folds");
        await tab.Page.ReloadAsync();
        await Assertions.Expect(tab.Verdict).ToContainTextAsync("7 folds");
        Assert.DoesNotContain(key, await tab.Page.EvaluateAsync<string>("() => JSON.stringify(localStorage)"), StringComparison.Ordinal);
    }

    private static bool IsPlan(IRequest request) => request.Method == "POST" && request.Url.Contains("/v1/forms", StringComparison.Ordinal);
}
