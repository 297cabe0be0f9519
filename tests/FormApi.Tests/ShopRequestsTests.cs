using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Requests as people write them: six values, measures of an arc, names and lengths of a shop; what is left open is named.</summary>
public sealed class ShopRequestsTests(Service service) : IClassFixture<Service>
{
    private static JsonObject Six(string units = "mm") => JsonNode.Parse(units == "mm"
        ? """{"units":"mm","panel":{"material":{"id":"al-3003-h14"},"thickness":1.2,"width":600,"curve":{"type":"arc","radius":150,"sweep":90}}}"""
        : """{"units":"in","panel":{"material":{"id":"3003-H14"},"gauge":16,"width":24,"curve":{"type":"arc","radius":6,"sweep":90}}}""")!.AsObject();

    [Theory]
    [InlineData("mm")]
    [InlineData("in")]
    public async Task Six_values_are_a_request_and_what_was_chosen_is_named_as_assumed(string units)
    {
        var answer = await service.Form(Six(units));
        Assert.NotEqual("cannot-be-made", (string)answer["verdict"]!);
        var assumed = answer["basis"]!.AsArray().Where(entry => ((string)entry!["method"]!).StartsWith("left open", StringComparison.Ordinal)).ToArray();
        Assert.Equal(
            ["panel.leadIn", "panel.leadOut", "form.material", "form.thickness", "form.foldRadius", "form.leadIn", "form.leadOut", "brake.length"],
            assumed.Select(entry => (string)entry!["quantity"]!));
        Assert.All(assumed, entry => Assert.Equal("assumption", (string)entry!["status"]!));
        var form = answer["request"]!["form"]!;
        Assert.Equal((double)answer["form"]!["thickness"]!, (double)form["foldRadius"]!, 1e-9);
        Assert.Equal((double)form["width"]!, (double)answer["request"]!["brake"]!["length"]!);
        Assert.True(units == "mm" ? form["thickness"] is not null : form["gauge"] is not null);
    }

    [Fact]
    public async Task The_chosen_sheet_carries_the_pull_and_the_next_thinner_one_would_be_near_its_yield()
    {
        double[] sheets = [0.8, 1, 1.2, 1.5, 2, 2.5, 3];
        foreach (var (material, thickness) in ((string, double)[])[("al-3003-h14", 1.2), ("steel-cr-cs", 1), ("ss-304", 1.2)])
        {
            var request = Six().With("/panel/material/id", $"\"{material}\"").With("/panel/thickness", $"{thickness}");
            var answer = await service.Form(request);
            Assert.Equal("pass", VerdictOf(answer, "form-yield"));
            var chosen = Array.IndexOf(sheets, (double)answer["form"]!["thickness"]!);
            if (chosen == 0 || (string)answer["request"]!["form"]!["backing"]! == "ribs")
                continue;
            var quick = request.With("/panel/springback", """{"model":"pure-bending"}""")
                .With("/form", $$"""{"thickness":{{sheets[chosen - 1]}},"foldRadius":{{sheets[chosen - 1]}}}""");
            Assert.True((double)(await service.Form(quick))["form"]!["give"]!["shareOfYield"]! >= 2.0 / 3);
        }
    }

    [Fact]
    public async Task A_fold_sharper_than_any_sheet_allows_takes_a_neutral_factor_and_any_sheet()
    {
        var answer = await service.Form(Six().With("/form", """{"foldRadius":0.05,"neutralFactor":0.4}"""));
        Assert.True((double)answer["form"]!["thickness"]! > 0);
        using var without = await service.Post("/v1/forms", Six().With("/form", """{"foldRadius":0.05}""").ToJsonString());
        Assert.Equal(422, (int)without.StatusCode);
    }

    [Fact]
    public async Task A_pull_that_no_standard_sheet_carries_bare_gets_ribs()
    {
        var answer = await service.Form(Six().With("/panel/material/id", "\"al-6061-t6\"").With("/panel/thickness", "1.6").With("/panel/curve/radius", "75"));
        Assert.Equal("ribs", (string)answer["request"]!["form"]!["backing"]!);
        Assert.NotNull(answer["form"]!["ribs"]);
    }

    [Fact]
    public async Task An_echo_sent_back_is_answered_alike_and_a_callers_own_value_is_no_assumption()
    {
        var answer = await service.Form(Six());
        var again = await service.Form(answer["request"]!.DeepClone().AsObject());
        Assert.True(JsonNode.DeepEquals(answer, again));
        var own = await service.Form(Six().With("/form", """{"leadIn":60}"""));
        Assert.DoesNotContain(own["basis"]!.AsArray(), entry => (string)entry!["quantity"]! == "form.leadIn");
    }

    [Theory]
    [InlineData("/v1/forms/prediction")]
    [InlineData("/v1/programs")]
    [InlineData("/v1/tolerances")]
    [InlineData("/v1/estimates")]
    public async Task Six_values_do_for_every_calculation(string path)
    {
        using var response = await service.Post(path, Six().ToJsonString());
        Assert.True((int)response.StatusCode == 200, await response.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_cone_needs_no_more_and_its_brake_is_as_long_as_its_longest_fold()
    {
        var request = JsonNode.Parse("""
            {"units":"mm","panel":{"material":{"id":"al-3003-h14"},"thickness":1.2,
             "curve":{"type":"taper","near":{"type":"arc","radius":120,"sweep":75},"far":{"type":"arc","radius":80,"sweep":75},"length":400}}}
            """)!.AsObject();
        var answer = await service.Form(request);
        var longest = answer["form"]!["stations"]!.AsArray().Max(station => (double)station!["length"]!);
        Assert.InRange((double)answer["request"]!["brake"]!["length"]!, longest, longest + 1);
    }

    [Fact]
    public async Task A_taper_without_a_lead_in_whose_end_cannot_be_placed_is_refused_not_broken()
    {
        var request = Requests.Example("inspectForm", "cowl-cone-both-ends").With("/panel/curve/near/radius", "69.99992999999999").With("/form/leadIn", "0")
            .With("/form/stepping", """{"folds":8}""").With("/panel/springback", """{"model":"pure-bending"}""").With("/measured", """
            {"angles":[7.9,15.9,14.9,16,15.9,16.4,15.8,8],"facets":[13.6,13.9,13.8,13.9,13.9,13.9,13.6],
             "far":{"facets":[21.5,21.8,21.9,21.8,22.4,21.3,21.5]}}
            """);
        using var response = await service.Post("/v1/inspections", request.ToJsonString());
        Assert.Equal(422, (int)response.StatusCode);
    }

    public static TheoryData<string> SameArcs() => new(
        """{"type":"arc","radius":150,"sweep":90}""",
        """{"type":"arc","radius":150,"sweep":90,"diameter":null,"chord":null,"rise":null,"arcLength":null,"through":null}""",
        """{"type":"arc","diameter":300,"sweep":90}""",
        """{"type":"arc","radius":150,"chord":212.132034356}""",
        """{"type":"arc","diameter":300,"arcLength":235.619449019}""",
        """{"type":"arc","chord":212.132034356,"rise":43.933982822}""",
        """{"type":"arc","sweep":90,"rise":43.933982822}""",
        """{"type":"arc","sweep":90,"chord":212.132034356}""",
        """{"type":"arc","chord":212.132034356,"arcLength":235.619449019}""",
        """{"type":"arc","rise":43.933982822,"arcLength":235.619449019}""",
        """{"type":"arc","radius":150,"sweep":90,"chord":212,"rise":44}""",
        """{"type":"arc","through":[[0,0],[106.066017178,43.933982822],[212.132034356,0]]}""");

    [Theory]
    [MemberData(nameof(SameArcs))]
    public async Task One_arc_however_measured_is_one_plan(string curve)
    {
        var answer = await service.Form(Six().With("/panel/curve", curve));
        var shown = answer["request"]!["panel"]!["curve"]!;
        Assert.Equal(150, (double)shown["radius"]!, 1e-4);
        Assert.Equal(90, (double)shown["sweep"]!, 1e-4);
        Assert.Equal(3, shown.AsObject().Count);
    }

    public static TheoryData<string, int, string, string, string> BadArcs() => new()
    {
        { """{"type":"arc","sweep":90}""", 400, "missing-field", "/panel/curve/radius", "" },
        { """{"type":"arc","radius":90}""", 400, "missing-field", "/panel/curve/sweep", "" },
        { """{"type":"arc","radius":90,"diameter":180}""", 400, "missing-field", "/panel/curve/sweep", "" },
        { """{"type":"arc"}""", 400, "missing-field", "/panel/curve/radius", "" },
        { """{"type":"arc","radius":150,"sweep":90,"chord":150}""", 422, "contradicts", "/panel/curve/chord", "The other measures make it 212.132, but 150 is given." },
        { """{"type":"arc","radius":150,"diameter":200,"sweep":90}""", 422, "contradicts", "/panel/curve/diameter", "The other measures make it 300, but 200 is given." },
        { """{"type":"arc","radius":100,"chord":250}""", 422, "contradicts", "/panel/curve/chord", "No arc has these measures." },
        { """{"type":"arc","through":[[0,0],[1,1],[2,2]]}""", 422, "contradicts", "/panel/curve/through", "No arc has these measures." },
        { """{"type":"arc","through":[[0,0],[1,1]]}""", 422, "out-of-range", "/panel/curve/through", "An arc goes through three points." },
        { """{"type":"segments","segments":[{"type":"arc","radius":90,"sweep":45},{"type":"arc","chord":20}]}""", 400, "missing-field", "/panel/curve/segments/1/radius", "" },
        { """{"type":"progressive","startRadius":200,"endRadius":100,"law":"clothoid"}""", 400, "missing-field", "/panel/curve/sweep", "" },
        { """{"type":"progressive","startRadius":200,"endRadius":100,"law":"involute","arcLength":150,"sweep":90}""", 422, "contradicts", "/panel/curve/sweep", "Radii and length make it 57.296, but 90 is given." },
    };

    [Theory]
    [MemberData(nameof(BadArcs))]
    public async Task Measures_that_are_too_few_or_contradict_are_refused_with_both_readings(string curve, int status, string code, string place, string text)
    {
        using var response = await service.Post("/v1/forms", Six().With("/panel/curve", curve).ToJsonString());
        var problem = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal(status, (int)response.StatusCode);
        var fault = problem["errors"]!.AsArray().First(error => (string)error!["pointer"]! == place)!;
        Assert.Equal(code, (string)fault["code"]!);
        if (text.Length > 0)
            Assert.Equal(text, (string)fault["text"]!);
    }

    [Fact]
    public async Task A_progressive_bend_by_its_length_is_the_one_by_its_sweep()
    {
        var bySweep = await service.Form(Six().With("/panel/curve", """{"type":"progressive","startRadius":200,"endRadius":100,"law":"involute","sweep":60}"""));
        var byLength = await service.Form(Six().With("/panel/curve", $$"""{"type":"progressive","startRadius":200,"endRadius":100,"law":"involute","arcLength":{{Math.PI * 50}}}"""));
        Assert.Equal(60, (double)byLength["request"]!["panel"]!["curve"]!["sweep"]!, 1e-6);
        Assert.Equal((double)bySweep["panel"]!["blank"]!["length"]!, (double)byLength["panel"]!["blank"]!["length"]!, 1e-4);
    }

    [Theory]
    [InlineData("3003-H14", "al-3003-h14")]
    [InlineData("en aw-3003 h14", "al-3003-h14")]
    [InlineData("1.4301", "ss-304")]
    [InlineData("Mild steel", "steel-cr-cs")]
    public async Task A_sheet_is_known_by_its_other_names(string name, string id)
    {
        var answer = await service.Form(Six().With("/panel/material/id", $"\"{name}\""));
        Assert.Equal(id, (string)answer["request"]!["panel"]!["material"]!["id"]!);
        using var response = await service.Client.GetAsync("/v1/materials/" + Uri.EscapeDataString(name));
        Assert.Equal(id, (string)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["id"]!);
    }

    [Fact]
    public async Task An_unknown_sheet_is_answered_with_the_three_nearest()
    {
        using var response = await service.Post("/v1/forms", Six().With("/panel/material/id", "\"3003-H24\"").ToJsonString());
        var fault = JsonNode.Parse(await response.Content.ReadAsStringAsync())!["errors"]![0]!;
        Assert.Equal("unknown-material", (string)fault["code"]!);
        Assert.StartsWith("Unknown material. Nearest: al-3003-h14, ", (string)fault["text"]!, StringComparison.Ordinal);
        Assert.Equal(2, ((string)fault["text"]!).Count(sign => sign == ','));
    }

    [Fact]
    public async Task Inches_gauges_and_finishes_are_read_as_a_shop_writes_them()
    {
        var request = Six("in").With("/panel/gauge", "\"16 ga\"").With("/panel/width", "\"24 1/2\"").With("/panel/leadOut", "\"6-3/4 in\"")
            .With("/panel/finish", "\"Brushed\"").With("/form", """{"thickness":"3/32","leadIn":"2 1/2\""}""")
            .With("/panel/curve", """{"type":"arc","through":[["0",0],["4 1/4","1 3/4"],["8 1/2",0]]}""");
        var shown = (await service.Form(request))["request"]!;
        Assert.Equal(16, (int)shown["panel"]!["gauge"]!);
        Assert.Equal(24.5, (double)shown["panel"]!["width"]!);
        Assert.Equal(6.75, (double)shown["panel"]!["leadOut"]!);
        Assert.Equal("satin", (string)shown["panel"]!["finish"]!);
        Assert.Equal(0.09375, (double)shown["form"]!["thickness"]!);
        Assert.Equal(2.5, (double)shown["form"]!["leadIn"]!);
        Assert.Equal(6.035714286, (double)shown["panel"]!["curve"]!["radius"]!, 1e-8);
    }

    [Theory]
    [InlineData("mm", "/panel/width", "\"24 1/2\"")]
    [InlineData("in", "/panel/width", "\"24 1/0\"")]
    [InlineData("in", "/panel/width", "\"two feet\"")]
    [InlineData("in", "/panel/width", "\"-3\"")]
    [InlineData("in", "/panel/curve/sweep", "\"90\"")]
    [InlineData("in", "/panel/gauge", "\"16 mm\"")]
    [InlineData("in", "/panel/finish", "\"chrome\"")]
    public async Task Anything_else_is_refused_as_strictly_as_before(string units, string place, string value)
    {
        using var response = await service.Post("/v1/forms", Six(units).With(place, value).ToJsonString());
        Assert.Equal(400, (int)response.StatusCode);
        var fault = JsonNode.Parse(await response.Content.ReadAsStringAsync())!["errors"]![0]!;
        Assert.Equal(place, (string)fault["pointer"]!);
        Assert.Contains((string)fault["code"]!, (string[])["wrong-type", "unknown-value"]);
    }

    private static string VerdictOf(JsonNode answer, string id) =>
        (string)answer["checks"]!.AsArray().First(check => (string)check!["id"]! == id)!["verdict"]!;
}
