using System.Globalization;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>How a panel comes off a form, through the real pipeline.</summary>
public sealed class PredictionsTests(Service service) : IClassFixture<Service>
{
    // A change to a form that stands, the value as JSON or null to remove the field.
    public static TheoryData<string, string?, int, string, string> BadStanding { get; } = new()
    {
        { "/stations", "{}", 400, "wrong-type", "/stations" },
        { "/stations", "[null]", 400, "null-not-allowed", "/stations/0" },
        { "/stations/1/stopAngle", "9", 400, "unknown-field", "/stations/1/stopAngle" },
        { "/stations/1/angle", null, 400, "missing-field", "/stations/1/angle" },
        { "/stations/1/angle", "\"16\"", 400, "wrong-type", "/stations/1/angle" },
        { "/predict", "true", 400, "unknown-field", "/predict" },
        { "/ends", "\"both\"", 400, "unknown-value", "/ends" },
        { "/stations", "[]", 422, "out-of-range", "/stations" },
        { "/stations", """[{"angle":60,"facetAfter":60}]""", 422, "out-of-range", "/stations" },
        { "/stations/0/angle", "0", 422, "out-of-range", "/stations/0/angle" },
        { "/stations/0/angle", "-8", 422, "out-of-range", "/stations/0/angle" },
        { "/stations/0/angle", "150.1", 422, "out-of-range", "/stations/0/angle" },
        { "/stations/2/facetAfter", "0", 422, "out-of-range", "/stations/2/facetAfter" },
        { "/stations/2/facetAfter", "1", 422, "prediction.facet-too-short", "/stations/2/facetAfter" },
        { "/stations/5/facetAfter", "61", 422, "contradicts", "/stations/5/facetAfter" },
        { "/form/leadOut", "61", 422, "contradicts", "/stations/5/facetAfter" },
        { "/brake", """{"length":1250}""", 422, "not-applicable", "/brake" },
        { "/marks", """{"datum":"edge"}""", 422, "not-applicable", "/marks" },
        { "/form/stepping", """{"folds":6}""", 422, "not-applicable", "/form/stepping" },
        { "/form/grain", "\"across\"", 422, "not-applicable", "/form/grain" },
        { "/form/neutralFactor", "0.4", 422, "not-applicable", "/form/neutralFactor" },
        { "/form/stop", """{"offset":1,"slope":1}""", 422, "not-applicable", "/form/stop" },
        { "/panel/trim", "5", 422, "not-applicable", "/panel/trim" },
        { "/panel/grain", "\"across\"", 422, "not-applicable", "/panel/grain" },
        { "/panel/clamp", """{"height":30}""", 422, "not-applicable", "/panel/clamp/height" },
        { "/panel/springback", """{"model":"wrap"}""", 422, "not-applicable", "/panel/springback/model" },
        { "/panel/springback", """{"factor":0.8}""", 422, "not-applicable", "/panel/springback/factor" },
        { "/panel/stockSheets", """[{"length":2000,"width":1000}]""", 422, "not-applicable", "/panel/stockSheets" },
    };

    [Theory]
    [MemberData(nameof(BadStanding))]
    public async Task Bad_values_are_named(string place, string? json, int status, string code, string faultAt)
    {
        using var response = await service.Post("/v1/forms/prediction", Requests.Standing().With(place, json).ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(status == (int)response.StatusCode, text);
        var fault = JsonNode.Parse(text)!["errors"]!.AsArray().FirstOrDefault(error => (string?)error!["pointer"] == faultAt);
        Assert.True(fault is not null, text);
        Assert.Equal(code, (string?)fault["code"]);
    }

    [Fact]
    public async Task Ends_without_stations_belong_to_the_stepping()
    {
        using var response = await service.Post("/v1/forms/prediction", Requests.Arc().With("/ends", "\"half\"").ToJsonString());
        Assert.Equal(422, (int)response.StatusCode);
        Assert.Contains("\"/ends\"", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_panel_is_said_to_be_an_object_and_a_missing_brake_is_chosen()
    {
        using var response = await service.Post("/v1/forms/prediction", Requests.Arc().With("/panel", null).ToJsonString());
        Assert.Equal(400, (int)response.StatusCode);
        var problem = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal("an object", (string?)problem["errors"]![0]!["allowed"]);
        var chosen = await service.Prediction(Requests.Arc().With("/brake", null));
        Assert.Equal(["length"], chosen["request"]!["brake"]!["assumed"]!.AsArray().Select(value => (string)value!));
    }

    [Fact]
    public async Task Stations_pasted_from_an_answer_give_what_the_form_request_gives()
    {
        // By pure bending form and curve end together, so that the hand is in one place.
        var arc = Requests.Arc().With("/panel/springback", """{"model":"pure-bending"}""");
        var planned = await service.Prediction(arc);
        var form = await service.Form(arc);
        var stations = new JsonArray([.. form["form"]!["stations"]!.AsArray().Select(station => new JsonObject
        {
            ["angle"] = station!["angle"]!.DeepClone(),
            ["facetAfter"] = station["facetAfter"]!.DeepClone(),
        })]);
        var standing = await service.Prediction(Requests.Arc().With("/brake", null).With("/stations", stations.ToJsonString()));
        Assert.True((bool)planned["wraps"]!);
        foreach (var field in new[] { "lever", "longestLever", "radius", "wantedRadius", "sweep", "wantedSweep" })
            Close(planned[field]!, standing[field]!);
        Close(planned["miss"]!["fitted"]!, standing["miss"]!["fitted"]!);
        Close(planned["ripple"]!["height"]!, standing["ripple"]!["height"]!);
        Close(planned["pull"]!["force"]!, standing["pull"]!["force"]!);
        Assert.Equal((int)planned["ripple"]!["facet"]!, (int)standing["ripple"]!["facet"]!);
        Assert.Equal("half", (string?)standing["request"]!["ends"]);
    }

    [Fact]
    public async Task The_shown_request_gives_the_same_answer()
    {
        foreach (var body in Requests.Predictions().Select(example => example.Body).Append(Requests.Standing()))
        {
            var first = await service.Prediction(body);
            Assert.Equal(first.ToJsonString(), (await service.Prediction(first["request"]!)).ToJsonString());
        }
    }

    [Fact]
    public async Task The_outcome_of_a_form_is_what_the_prediction_says()
    {
        var whole = await service.Prediction(Requests.Arc());
        var form = await service.Form(Requests.Arc());
        var outcome = form["panel"]!["outcome"]!;
        Assert.True((bool)outcome["solved"]!);
        foreach (var same in new[] { "radius", "sweep", "miss", "ripple" })
            Assert.Equal(whole[same]!.ToJsonString(), outcome[same]!.ToJsonString());
        Assert.Equal(whole["pull"]!["steps"]!.ToJsonString(), outcome["touches"]!.ToJsonString());
        Assert.Empty(outcome["untouched"]!.AsArray());
        Assert.Contains(form["checks"]!.AsArray(), check => (string?)check!["id"] == "facets-show");
        Assert.Contains(form["basis"]!.AsArray(), basis => (string?)basis!["quantity"] == "panel.outcome.ripple" && (string?)basis["status"] == "model");
    }

    [Fact]
    public async Task A_panel_comes_off_within_what_the_caller_allows_or_the_plan_says_so()
    {
        var strict = Requests.Arc().With("/panel/tolerance", """{"radius":0.0001}""").With("/form/stepping", """{"folds":8}""");
        var answer = await service.Form(strict);
        Assert.Equal(0.0001, (double)answer["request"]!["panel"]!["tolerance"]!["radius"]!);
        Assert.Equal(1, (double)answer["request"]!["panel"]!["tolerance"]!["angle"]!);
        var check = answer["checks"]!.AsArray().Single(check => (string?)check!["id"] == "finished-radius")!;
        Assert.Equal("warn", (string?)check["verdict"]);
        Assert.Equal(0.0001, (double)check["limit"]!);
    }

    [Theory]
    [InlineData("""{"model":"pure-bending"}""", "pure-bending")]
    [InlineData("""{"factor":0.8}""", "factor")]
    public async Task A_quick_plan_is_never_ready(string springback, string word)
    {
        var form = await service.Form(Requests.Arc().With("/panel/springback", springback));
        Assert.False((bool)form["panel"]!["outcome"]!["solved"]!);
        Assert.Contains(word, (string?)form["panel"]!["outcome"]!["text"], StringComparison.Ordinal);
        Assert.Null(form["panel"]!["outcome"]!["radius"]);
        Assert.Equal("warn", (string?)form["checks"]!.AsArray().Single(check => (string?)check!["id"] == "outcome")!["verdict"]);
        Assert.NotEqual("ready", (string?)form["verdict"]);
    }

    [Fact]
    public async Task A_measured_yield_is_used_inside_the_wrap()
    {
        var own = await service.Form(Requests.Arc());
        var strong = await service.Form(Requests.Arc().With("/panel/springback", """{"effectiveYield":320}"""));
        Assert.Equal("wrap", (string?)strong["panel"]!["springback"]!["model"]);
        Assert.Equal("wrap", (string?)strong["request"]!["panel"]!["springback"]!["model"]);
        Assert.True((double)strong["form"]!["sweep"]! > (double)own["form"]!["sweep"]!);
        Assert.Equal((double)own["panel"]!["outcome"]!["sweep"]!, (double)strong["panel"]!["outcome"]!["sweep"]!, 1);
    }

    [Fact]
    public async Task A_taper_says_what_comes_off_at_both_ends()
    {
        var taper = """{"type":"taper","near":{"type":"arc","radius":90,"sweep":60},"far":{"type":"arc","radius":120,"sweep":60},"length":600}""";
        var form = await service.Form(Requests.Arc().With("/panel/curve", taper));
        Assert.NotEmpty(form["form"]!["stations"]!.AsArray());
        var outcome = form["panel"]!["outcome"]!;
        Assert.True((bool)outcome["solved"]!, (string?)outcome["text"]);
        foreach (var end in (string[])["near", "far"])
        {
            var (radius, wanted) = ((double)outcome["ends"]![end]!["radius"]!, (double)outcome["ends"]![end]!["wantedRadius"]!);
            Assert.Equal(1, radius / wanted, 0.02);
        }

        var prediction = await service.Prediction(Requests.Arc().With("/panel/curve", taper));
        Assert.Equal(outcome["ends"]!.ToJsonString(), prediction["ends"]!.ToJsonString());
    }

    [Fact]
    public async Task Too_long_a_lever_is_an_answer_with_the_longest_that_will_do()
    {
        var answer = await service.Prediction(Requests.Standing().With("/panel/lever", "3000"));
        Assert.False((bool)answer["wraps"]!);
        Assert.NotNull(answer["text"]);
        Assert.True((double)answer["longestLever"]! < 3000);
        Assert.Null(answer["curve"]);
        Assert.Empty(answer["facets"]!.AsArray());
        Assert.False((bool)answer["ripple"]!["known"]!);
    }

    [Fact]
    public async Task The_callers_own_limits_are_judged_beside_the_named_finishes()
    {
        var answer = await service.Prediction(Requests.Standing().With("/panel/allowedRipple", "0.0001"));
        var finishes = answer["finishes"]!.AsArray();
        Assert.Equal(["gloss", "satin", "hidden", "own"], finishes.Select(finish => (string)finish!["finish"]!));
        Assert.True((bool)finishes[3]!["shows"]!);
    }

    [Fact]
    public async Task Inches_and_millimetres_agree()
    {
        var mm = await service.Prediction(Requests.Standing());
        var inch = Requests.Standing().With("/units", "\"in\"");
        string[] lengths = ["/panel/thickness", "/panel/width", "/panel/leadIn", "/panel/leadOut", "/panel/curve/radius", "/form/thickness", "/form/foldRadius", "/form/leadIn", "/form/leadOut", .. Enumerable.Range(0, 6).Select(i => $"/stations/{i}/facetAfter")];
        foreach (var length in lengths)
        {
            var value = length.Split('/')[1..].Aggregate((JsonNode)inch, (node, step) => node is JsonArray list ? list[int.Parse(step, CultureInfo.InvariantCulture)]! : node[step]!).GetValue<double>();
            inch = inch.With(length, (value / 25.4).ToString("R", CultureInfo.InvariantCulture));
        }

        var answer = await service.Prediction(inch);
        Close(mm["radius"]!, answer["radius"]!, 25.4);
        Close(mm["sweep"]!, answer["sweep"]!);
        Close(mm["pull"]!["force"]!, answer["pull"]!["force"]!, 4.4482216152605);
        Close(mm["pull"]!["clampMoment"]!, answer["pull"]!["clampMoment"]!, 4.4482216152605);
        Close(mm["curve"]!["curvature"]![10]!, answer["curve"]!["curvature"]![10]!, 1 / 25.4);
        Close(mm["curve"]!["points"]![20]![1]!, answer["curve"]!["points"]![20]![1]!, 25.4);
    }

    private static void Close(JsonNode one, JsonNode other, double factor = 1)
    {
        var (first, second) = ((double)one, (double)other * factor);
        Assert.True(Math.Abs(first - second) <= 1e-4 * Math.Max(1e-3, Math.Abs(first)), $"{first} against {second}");
    }
}
