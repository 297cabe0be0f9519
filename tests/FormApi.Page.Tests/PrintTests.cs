using System.Text.Json.Nodes;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;

namespace FormApi.Page.Tests;

/// <summary>Print: what comes out of the browser is as large as the part, and files are the service's own.</summary>
[Collection(Benches.Name)]
public sealed class PrintTests(Bench bench)
{
    private const double PointsPerMm = 72 / 25.4;

    // A twentieth of a millimetre: browsers lay out in whole sixty-fourths of a pixel.
    private const double Tolerance = 0.05;

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_part_printed_from_the_page_is_as_large_as_the_part()
    {
        await using var tab = await bench.Open();
        await tab.At("print");
        await tab.Page.Locator("#part").SelectOptionAsync("gauge-inside");
        await Assertions.Expect(tab.Page.Locator(".paper-room svg[role=img]")).ToBeVisibleAsync();
        await Assertions.Expect(tab.Page.Locator(".paper-room")).ToContainTextAsync("Gauge");
        var drawing = await tab.Page.Locator(".paper-room svg[role=img]").EvaluateAsync<double[]>("""
            svg => { const box = svg.querySelector("path[fill='none']").getBBox(); return [box.width, box.height]; }
            """);
        var pdf = await tab.Page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true });
        using var document = PdfDocument.Open(pdf);
        var sizes = document.GetPages().SelectMany(page => page.Paths).Where(path => path.IsStroked).Select(path => path.GetBoundingRectangle()).OfType<PdfRectangle>()
            .Select(box => (Width: box.Width / PointsPerMm, Height: box.Height / PointsPerMm)).ToArray();
        Assert.True(drawing[0] > 50 && drawing[1] > 50, "The part is too small to measure.");
        Assert.Contains(sizes, size => Math.Abs(size.Width - drawing[0]) < Tolerance && Math.Abs(size.Height - drawing[1]) < Tolerance);
        var text = string.Concat(document.GetPages().Select(page => page.Text));
        Assert.DoesNotContain("What I want", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    [Trait("Category", "Long")]
    public async Task Files_are_those_of_the_service(int width)
    {
        await using var tab = await bench.Open(width);
        await tab.At("print");
        var file = await tab.Page.RunAndWaitForDownloadAsync(() => tab.Page.GetByRole(AriaRole.Button, new() { Name = "Folds as a table" }).ClickAsync());
        Assert.Equal("cab-corner-folds.csv", file.SuggestedFilename);
        var request = Jobs.CabCorner();
        request["sheet"] = new JsonObject { ["title"] = "Cab corner" };
        using var asked = new HttpRequestMessage(HttpMethod.Post, "/v1/forms/drawing") { Content = new StringContent(request.ToJsonString(), null, "application/json") };
        asked.Headers.Accept.ParseAdd("text/csv");
        using var answer = await bench.Client.SendAsync(asked);
        Assert.Equal(await answer.Content.ReadAsStringAsync(), await File.ReadAllTextAsync(await file.PathAsync()));

        var sheet = await tab.Page.RunAndWaitForDownloadAsync(() => tab.Page.GetByRole(AriaRole.Button, new() { Name = "Sheet with a 1:1 story stick" }).ClickAsync());
        using var document = PdfDocument.Open(await File.ReadAllBytesAsync(await sheet.PathAsync()));
        Assert.Contains("Cab corner", document.GetPage(1).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("strip-card")]
    [InlineData("panel-card")]
    [Trait("Category", "Long")]
    public async Task A_card_to_fill_in_is_printed_and_not_cut(string card)
    {
        await using var tab = await bench.Open();
        await tab.At("print");
        await tab.Page.Locator("#part").SelectOptionAsync(card);
        await Assertions.Expect(tab.Page.GetByRole(AriaRole.Button, new() { Name = "DXF", Exact = true })).ToHaveCountAsync(0);
        await Assertions.Expect(tab.Page.GetByRole(AriaRole.Button, new() { Name = "Print it from here" })).ToBeEnabledAsync();
        await Assertions.Expect(tab.Page.Locator(".paper-room svg[role=img]")).ToContainTextAsync("card", new() { IgnoreCase = true });
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_part_that_the_job_has_not_is_said_not_to_be_there()
    {
        await using var tab = await bench.Open();
        tab.ExpectsRefusals = true;
        await tab.At("print");
        await tab.Page.Locator("#part").SelectOptionAsync("rib");
        await Assertions.Expect(tab.Page.Locator(".full-size .fault")).Not.ToBeEmptyAsync();
        await Assertions.Expect(tab.Page.GetByRole(AriaRole.Button, new() { Name = "Print it from here" })).ToBeDisabledAsync();
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_phone_opens_the_job_from_its_symbol()
    {
        await using var tab = await bench.Open();
        await tab.At("want");
        await tab.PlannedBy(() => tab.Field("/panel/width").FillAsync("640"));
        await tab.Page.WaitForFunctionAsync("() => location.hash.length > 40");
        await tab.GoTo("Print");
        var asked = await tab.Page.RunAndWaitForResponseAsync(
            () => tab.Page.ReloadAsync(), response => response.Url.Contains("/page/symbol", StringComparison.Ordinal) && response.Url.Length > 200);
        Assert.Equal(200, asked.Status);
        var address = Uri.UnescapeDataString(new Uri(asked.Url).Query["?address=".Length..]);
        await using var phone = await bench.Open(390);
        await phone.Page.GotoAsync(address.Replace("#fold", "#want", StringComparison.Ordinal));
        await phone.Planned();
        await Assertions.Expect(phone.Field("/panel/width")).ToHaveValueAsync("640");
    }
}
