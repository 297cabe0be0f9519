using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>How sure a plan is, as a caller asks for it and reads it.</summary>
public sealed class OutlookTests(Service service) : IClassFixture<Service>
{
    private const int Causes = 5;

    [Fact]
    public async Task Every_plan_says_how_sure_it_is()
    {
        var outlook = (await service.Form(Requests.Arc()))["panel"]!["outlook"]!;
        Assert.True((bool)outlook["known"]!);
        foreach (var band in new[] { outlook["radius"]!, outlook["sweep"]!, outlook["afterStrip"]!["radius"]!, outlook["afterStrip"]!["sweep"]! })
            Assert.True((double)band["low"]! < (double)band["value"]! && (double)band["value"]! < (double)band["high"]!);
        Assert.Null(outlook["ripple"]!["low"]);
        Assert.True((double)outlook["ripple"]!["value"]! < (double)outlook["ripple"]!["high"]!);
        Assert.InRange((double)outlook["chance"]!["facets"]!, 0, 1);
        Assert.InRange((double)outlook["chance"]!["sweep"]!, 0, 1);
        Assert.Equal(1, outlook["shares"]!.AsArray().Sum(share => (double)share!), 6);
        Assert.Equal(Causes, outlook["shares"]!.AsArray().Count);
        Assert.Contains("without a strip this panel may come off anywhere from R", (string)outlook["text"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Scatter_that_is_left_out_is_shown_with_its_source()
    {
        var answer = await service.Form(Requests.Arc().With("/panel/scatter", """{"modulus":1}"""));
        var scatter = answer["request"]!["panel"]!["scatter"]!;
        Assert.Equal((8.0, 1.0, 0.5, 0.4), ((double)scatter["yield"]!, (double)scatter["modulus"]!, (double)scatter["foldAngle"]!, (double)scatter["mark"]!));
        Assert.True((double)scatter["thickness"]! > 0);
        var basis = answer["basis"]!.AsArray().ToDictionary(line => (string)line!["quantity"]!, line => (string)line!["status"]!);
        Assert.Equal("published-as-quoted", basis["panel.scatter.yield"]);
        Assert.Equal("caller", basis["panel.scatter.modulus"]);
        Assert.Equal("assumption", basis["panel.scatter.foldAngle"]);
        Assert.Equal("model", basis["panel.outlook"]);
    }

    [Fact]
    public async Task A_measured_yield_scatters_less_and_needs_no_strip()
    {
        var answer = await service.Form(Requests.Arc().With("/panel/springback", """{"effectiveYield":290}"""));
        Assert.Equal(2, (double)answer["request"]!["panel"]!["scatter"]!["yield"]!);
        Assert.Null(answer["panel"]!["outlook"]!["afterStrip"]);
        Assert.Equal("pass", (string?)Outlook(answer)["verdict"]);
        Assert.Null(Outlook(answer)["limit"]);
    }

    [Fact]
    public async Task A_wide_band_says_to_bend_a_strip_first()
    {
        var answer = await service.Form(Requests.Arc().With("/panel/curve/radius", "400").With("/panel/curve/sweep", "45"));
        Assert.Equal("warn", (string?)Outlook(answer)["verdict"]);
        Assert.StartsWith("Bend a strip first", (string)Outlook(answer)["text"]!, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("springback strip", (string)Outlook(answer)["remedy"]!["text"]!, StringComparison.Ordinal);
        Assert.Empty(Outlook(answer)["remedy"]!["changes"]!.AsArray());
    }

    [Fact]
    public async Task Confidence_asks_for_more_folds()
    {
        var even = await service.Form(Requests.Arc());
        var sure = await service.Form(Requests.Arc().With("/form/stepping", """{"confidence":0.99}"""));
        Assert.Equal(0.5, (double)even["request"]!["form"]!["stepping"]!["confidence"]!);
        Assert.True((int)sure["form"]!["folds"]! > (int)even["form"]!["folds"]!);
        Assert.True((double)sure["panel"]!["outlook"]!["chance"]!["facets"]! > 0.95);
    }

    private static JsonNode Outlook(JsonNode answer) => answer["checks"]!.AsArray().Single(check => (string?)check!["id"] == "outlook")!;
}
