using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>Without the service: the page says so, and what was planned before still opens.</summary>
[Collection(Benches.Name)]
public sealed class AwayTests(Bench bench)
{
    [Fact]
    [Trait("Category", "Long")]
    public async Task What_was_planned_before_opens_without_the_network()
    {
        await using var tab = await bench.Open(keepsWorking: true);
        // The browser notes every call that nobody answered.
        tab.ExpectsRefusals = true;
        await tab.At("want");
        await tab.Page.EvaluateAsync("() => navigator.serviceWorker.ready");
        await tab.Page.WaitForFunctionAsync("() => navigator.serviceWorker.controller !== null");
        // The address follows the job when nobody types any more.
        await tab.Page.WaitForFunctionAsync("() => location.hash.includes('/')");
        var before = await tab.Page.EvaluateAsync<string>("() => location.hash");
        await tab.PlannedBy(() => tab.Field("/panel/width").FillAsync("700"));
        await tab.Page.WaitForFunctionAsync("before => location.hash !== before", before);
        await tab.GoTo("Fold");
        await Assertions.Expect(tab.Page.Locator(".count")).ToContainTextAsync("Step 1");
        await tab.Page.Context.SetOfflineAsync(true);
        await tab.Page.ReloadAsync();
        await Assertions.Expect(tab.Page.Locator(".count")).ToContainTextAsync("Step 1");
        await tab.GoTo("What I want");
        await Assertions.Expect(tab.Page.Locator(".away")).ToContainTextAsync("The service is away");
        await Assertions.Expect(tab.Verdict).ToContainTextAsync("folds");
        await tab.Field("/panel/width").FillAsync("711");
        await Assertions.Expect(tab.Page.Locator(".away")).ToBeVisibleAsync();
        await Assertions.Expect(tab.Page.Locator("html")).ToHaveAttributeAsync("data-busy", "no");
        await tab.Page.Context.SetOfflineAsync(false);
        await tab.PlannedBy(() => tab.Field("/panel/width").FillAsync("712"));
        await Assertions.Expect(tab.Page.Locator(".away")).ToHaveCountAsync(0);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task Without_a_worker_too_it_says_that_the_service_is_away()
    {
        await using var tab = await bench.Open();
        tab.ExpectsRefusals = true;
        await tab.At("want");
        await tab.Page.Context.SetOfflineAsync(true);
        await tab.Field("/panel/width").FillAsync("705");
        await Assertions.Expect(tab.Page.Locator(".away")).ToContainTextAsync("The service is away");
    }
}
