using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>A panel that came off wrong, through the real pipeline.</summary>
public sealed class CorrectionsTests(Service service) : IClassFixture<Service>
{
    // A change to a panel off a form that stands, the value as JSON or null to remove the field.
    public static TheoryData<string, string?, int, string, string> BadStanding { get; } = new()
    {
        { "/measured", null, 400, "missing-field", "/measured" },
        { "/measured", "{}", 422, "choose-one", "/measured/sweep" },
        { "/measured/sweap", "57", 400, "unknown-field", "/measured/sweap" },
        { "/measured/sweep", "\"57\"", 400, "wrong-type", "/measured/sweep" },
        { "/measured/sweep", "-1", 422, "out-of-range", "/measured/sweep" },
        { "/measured/sweep", "401", 422, "out-of-range", "/measured/sweep" },
        { "/measured/sweepError", "0", 422, "out-of-range", "/measured/sweepError" },
        { "/measured/radius", "0", 422, "out-of-range", "/measured/radius" },
        { "/measured/radiusError", "11", 422, "out-of-range", "/measured/radiusError" },
        { "/measured/pointError", "0.5", 422, "not-applicable", "/measured/pointError" },
        { "/measured/fromFold", "2", 422, "choose-one", "/measured/toFold" },
        { "/measured/toFold", "5", 422, "choose-one", "/measured/toFold" },
        { "/measured", """{"radius":95,"fromFold":2,"toFold":7}""", 422, "out-of-range", "/measured/toFold" },
        { "/measured/points", "[[0,0],[1,0]]", 422, "out-of-range", "/measured/points" },
        { "/measured/points", "[[0,0],[1,0],[2,0],[3,0],[4,1e7]]", 422, "out-of-range", "/measured/points/4/1" },
        { "/measured/points", "[[0,0],[30,0],[60,-10],[85,-30],[100,-60],[105,-90]]", 422, "corrections.mirrored", "/measured/points" },
        { "/measured/points", "[null]", 400, "null-not-allowed", "/measured/points/0" },
        { "/corrections/step", "0", 422, "out-of-range", "/corrections/step" },
        { "/corrections/maxSteps", "101", 422, "out-of-range", "/corrections/maxSteps" },
        { "/corrections/direction", "\"open-only\"", 400, "unknown-value", "/corrections/direction" },
        { "/stations/1/angle", "0", 422, "out-of-range", "/stations/1/angle" },
        { "/stations/2/facetAfter", "1", 422, "prediction.facet-too-short", "/stations/2/facetAfter" },
        { "/brake", """{"length":1250}""", 422, "not-applicable", "/brake" },
        { "/form/stepping", """{"folds":6}""", 422, "not-applicable", "/form/stepping" },
        { "/panel/springback", """{"factor":0.8}""", 422, "not-applicable", "/panel/springback/factor" },
        { "/panel/trim", "5", 422, "not-applicable", "/panel/trim" },
        { "/panel/curve", """{"type":"taper","near":{"type":"arc","radius":90,"sweep":60},"far":{"type":"arc","radius":80,"sweep":60},"length":600}""", 422, "not-applicable", "/panel/curve" },
        { "/panel/lever", "1e4", 422, "corrections.not-followed", "/panel" },
    };

    [Theory]
    [MemberData(nameof(BadStanding))]
    public async Task Bad_values_are_named(string place, string? json, int status, string code, string faultAt)
    {
        using var response = await service.Post("/v1/panels/corrections", Standing().With(place, json).ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(status == (int)response.StatusCode, text);
        var fault = JsonNode.Parse(text)!["errors"]!.AsArray().FirstOrDefault(error => (string?)error!["pointer"] == faultAt);
        Assert.True(fault is not null, text);
        Assert.Equal(code, (string?)fault["code"]);
    }

    [Theory]
    [InlineData("/ends", "\"half\"", "not-applicable", "/ends")]
    [InlineData("/panel/springback", """{"factor":0.8}""", "not-applicable", "/panel/springback/factor")]
    [InlineData("/measured", """{"radius":95,"fromFold":2,"toFold":40}""", "corrections.stretch", "/measured/toFold")]
    public async Task Of_a_planned_form_bad_values_are_named_too(string place, string json, string code, string faultAt)
    {
        using var response = await service.Post("/v1/panels/corrections", Planned().With(place, json).ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(422 == (int)response.StatusCode, text);
        var fault = JsonNode.Parse(text)!["errors"]!.AsArray().FirstOrDefault(error => (string?)error!["pointer"] == faultAt);
        Assert.True(fault is not null, text);
        Assert.Equal(code, (string?)fault["code"]);
    }

    [Fact]
    public async Task The_panel_as_planned_is_the_plans_own()
    {
        var plan = await service.Answer("/v1/forms", Requests.Arc());
        var answer = await service.Answer("/v1/panels/corrections", Planned());
        foreach (var value in new[] { "sweep", "radius" })
            Assert.Equal((double)plan["panel"]!["outcome"]![value]!, (double)answer["planned"]![value]!, 6);
    }

    [Fact]
    public async Task What_is_to_be_pasted_is_taken_as_it_is()
    {
        var answer = await service.Answer("/v1/panels/corrections", Planned());
        Assert.Empty(answer["doubts"]!.AsArray());
        var next = Requests.Arc();
        next["panel"]!.AsObject()["springback"] = answer["paste"]!["panel"]!["springback"]!.DeepClone();
        var plan = await service.Answer("/v1/forms", next);
        Assert.True((bool)plan["panel"]!["outcome"]!["solved"]!);

        // The form as corrected stands for the next panel.
        var standing = Requests.Arc();
        foreach (var field in new[] { "brake", "marks" })
            standing.Remove(field);
        standing["panel"]!.AsObject()["springback"] = answer["paste"]!["panel"]!["springback"]!.DeepClone();
        standing["panel"]!.AsObject()["lever"] = plan["panel"]!["pull"]!["lever"]!.DeepClone();
        standing["stations"] = answer["stations"]!.DeepClone();
        var predicted = await service.Answer("/v1/forms/prediction", standing);
        Near((double)answer["after"]!["sweep"]!, (double)predicted["sweep"]!, 0.01);
        standing["measured"] = new JsonObject { ["sweep"] = (double)predicted["sweep"]! };
        var again = await service.Answer("/v1/panels/corrections", standing);
        Assert.True((bool)again["meets"]!);
    }

    [Fact]
    public async Task Inches_and_millimetres_give_one_answer()
    {
        var mm = await service.Answer("/v1/panels/corrections", Standing());
        var inches = Standing().With("/units", "\"in\"");
        foreach (var (part, fields) in new[] { ("panel", new[] { "thickness", "width", "leadIn", "leadOut" }), ("form", ["thickness", "foldRadius", "leadIn", "leadOut"]) })
        {
            foreach (var field in fields)
                inches[part]![field] = (double)inches[part]![field]! / 25.4;
        }

        inches["panel"]!["curve"]!["radius"] = 90 / 25.4;
        foreach (var station in inches["stations"]!.AsArray())
            station!["facetAfter"] = (double)station["facetAfter"]! / 25.4;
        inches["measured"]!["radius"] = (double)inches["measured"]!["radius"]! / 25.4;
        var other = await service.Answer("/v1/panels/corrections", inches);
        Assert.Equal(mm["folds"]!.ToJsonString(), other["folds"]!.ToJsonString());
        Near((double)mm["yield"]!["value"]! / 0.006894757293168, (double)other["yield"]!["value"]!, 1e-6);
        Near((double)mm["after"]!["radius"]! / 25.4, (double)other["after"]!["radius"]!, 1e-6);
    }

    [Fact]
    public async Task A_short_answer_keeps_the_figures_and_leaves_the_words_out()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/panels/corrections") { Content = new StringContent(Standing().ToJsonString(), null, "application/json") };
        request.Headers.Add("Prefer", "return=minimal");
        using var response = await service.Client.SendAsync(request);
        var answer = JsonNode.Parse(await response.Content.ReadAsStringAsync())!.AsObject();
        Assert.Equal(200, (int)response.StatusCode);
        Assert.False(answer.ContainsKey("request") || answer.ContainsKey("basis") || answer.ContainsKey("links"));
        Assert.True(answer.ContainsKey("folds") && answer.ContainsKey("yield") && answer.ContainsKey("stations"));
    }

    [Fact]
    public async Task A_batch_line_gives_what_the_call_alone_gives()
    {
        var alone = await service.Answer("/v1/panels/corrections", Standing());
        var line = new JsonObject { ["id"] = "p1", ["operation"] = "correction", ["request"] = Standing() };
        using var response = await service.Client.PostAsync("/v1/batches", new StringContent(line.ToJsonString() + "\n", null, "application/x-ndjson"));
        var answer = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal(200, (int)answer["status"]!);
        Assert.Equal(alone.ToJsonString(), answer["answer"]!.ToJsonString());
    }

    [Theory]
    [InlineData("""{"sweep":0}""")]
    [InlineData("""{"sweep":400}""")]
    [InlineData("""{"radius":0.5}""")]
    [InlineData("""{"radius":100000}""")]
    [InlineData("""{"sweep":57,"radius":20,"sweepError":0.001,"radiusError":0.001}""")]
    [InlineData("""{"points":[[0,0],[0,0],[0,0],[0,0],[0,0]]}""")]
    [InlineData("""{"points":[[0,0],[1000000,0],[0,0],[-1000000,1000000],[5,5]]}""")]
    [InlineData("""{"points":[[0,0],[10,0],[20,0],[30,0],[40,0]],"pointError":0.001}""")]
    [Trait("Category", "Long")]
    public async Task Readings_that_no_panel_gives_are_answered_and_doubted(string measured)
    {
        using var response = await service.Post("/v1/panels/corrections", Standing().With("/measured", measured).ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True((int)response.StatusCode is 200 or 422, text);
        if ((int)response.StatusCode == 200)
        {
            var answer = JsonNode.Parse(text)!;
            Assert.NotEmpty(answer["doubts"]!.AsArray());
            Assert.Null(answer["paste"]);
        }
    }

    private static void Near(double expected, double actual, double share) =>
        Assert.True(Math.Abs(actual - expected) <= share * Math.Abs(expected), $"expected {expected}, got {actual}");

    private static JsonObject Planned() => Requests.Arc().With("/measured", """{"sweep":87.5,"radius":92.5}""");

    private static JsonObject Standing() => Requests.Standing().With("/measured", """{"sweep":57,"radius":95}""");
}
