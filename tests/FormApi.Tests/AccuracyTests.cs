using System.Globalization;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Error budgets before folding and inspections after it, through the real pipeline.</summary>
public sealed class AccuracyTests(Service service) : IClassFixture<Service>
{
    [Theory]
    [MemberData(nameof(Requests.AccuracyExamples), MemberType = typeof(Requests))]
    public async Task The_shown_request_gives_the_same_answer(string operation, string name)
    {
        var first = await Ask(operation, Requests.Example(operation, name));
        Assert.Equal(first.ToJsonString(), (await Ask(operation, first["request"]!)).ToJsonString());
    }

    [Fact]
    public async Task A_form_made_as_planned_makes_the_panel_that_was_planned()
    {
        var request = Requests.Example("computeForm", "cab-corner-arc");
        var plan = await service.Form(request);
        request["measured"] = new JsonObject
        {
            ["angles"] = new JsonArray([.. plan["form"]!["stations"]!.AsArray().Select(station => station!["angle"]!.DeepClone())]),
        };
        var panel = (await service.Answer("/v1/inspections", request))["panel"]!;
        foreach (var which in (string[])["planned", "asBuilt"])
        {
            Assert.Equal((double)plan["panel"]!["outcome"]!["sweep"]!, (double)panel[which]!["sweep"]!, 0.01);
            Assert.Equal((double)plan["panel"]!["outcome"]!["radius"]!, (double)panel[which]!["radius"]!, 0.01);
        }
    }

    [Fact]
    public async Task What_was_left_out_is_echoed_as_one_standard_deviation()
    {
        var answer = await Ask("computeTolerances", Requests.Arc());
        Assert.Equal(0.5, (double)answer["request"]!["accuracy"]!["scatter"]!);
        Assert.Equal(0.4, (double)answer["request"]!["accuracy"]!["markScatter"]!);
        Assert.Equal(0, (double)answer["request"]!["accuracy"]!["bias"]!);
        Assert.Null(answer["needed"]);
        Assert.Contains(answer["basis"]!.AsArray(), basis => (string?)basis!["quantity"] == "accuracy.scatter" && (string?)basis["status"] == "assumption");
        Assert.Equal(14, answer["published"]!.AsArray().Count);
        Assert.All(answer["published"]!.AsArray().Where(row => (string?)row!["standard"] == "DIN 6935"), row => Assert.Equal("from-memory", (string?)row!["status"]));
    }

    // The default's own figure, given by the caller, is the caller's.
    [Theory]
    [InlineData("{}", true, true)]
    [InlineData("""{"scatter":0.5,"markScatter":0.4}""", false, false)]
    [InlineData("""{"scatter":0.5}""", false, true)]
    [InlineData("""{"scatter":0.5,"assumed":["scatter"]}""", true, false)]
    public async Task Only_what_nobody_measured_is_called_an_assumption(string accuracy, bool scatter, bool marks)
    {
        var answer = await Ask("computeTolerances", Requests.Arc().With("/accuracy", accuracy));
        Assert.Equal(scatter ? "assumption" : "caller", StatusOf("accuracy.scatter"));
        Assert.Equal(marks ? "assumption" : "caller", StatusOf("accuracy.markScatter"));
        Assert.Equal(scatter || marks, answer["notes"]!.AsArray().Any(note => (string?)note!["id"] == "accuracy-assumed"));

        string? StatusOf(string quantity) => (string?)answer["basis"]!.AsArray().Single(basis => (string?)basis!["quantity"] == quantity)!["status"];
    }

    // n folds: bias n b, scatter u √n.
    [Fact]
    public async Task Closing_adds_up_as_by_hand()
    {
        var answer = await Ask("computeTolerances", Requests.Example("computeTolerances", "strip-set-stop"));
        Assert.Equal(-0.6, (double)answer["closing"]!["bias"]!, 9);
        Assert.Equal(0.2 * Math.Sqrt(6), (double)answer["closing"]!["scatter"]!, 9);
        Assert.Equal(-0.6 - (3 * 0.2 * Math.Sqrt(6)), (double)answer["closing"]!["interval"]![0]!, 9);
        Assert.Equal((1.5 - 0.6) / (3 * Math.Sqrt(6)), (double)answer["needed"]!["closing"]!, 9);
    }

    [Fact]
    public async Task The_needed_scatter_passes_its_own_check()
    {
        var request = Requests.Example("computeTolerances", "cab-corner-by-hand");
        var needed = (await Ask("computeTolerances", request))["needed"]!;
        var scatter = 0.9999 * Math.Min((double)needed["closing"]!, (double)needed["endExact"]!);
        var better = await Ask("computeTolerances", request.With("/accuracy", $$"""{"scatter":{{scatter.ToString("R", CultureInfo.InvariantCulture)}}}"""));
        Assert.All(
            better["checks"]!.AsArray().Where(check => ((string)check!["id"]!).EndsWith("-tolerance", StringComparison.Ordinal)),
            check => Assert.Equal("pass", (string?)check!["verdict"]));
    }

    [Fact]
    public async Task A_plan_measured_as_planned_needs_no_correction_and_changes_no_panel()
    {
        var form = await service.Form(Requests.Arc());
        var stations = form["form"]!["stations"]!.AsArray();
        var angles = new JsonArray([.. stations.Select(station => station!["angle"]!.DeepClone())]);
        double[] places = [.. stations.Select(station => (double)station!["at"]!)];
        var spacings = new JsonArray([.. places.Zip(places.Skip(1), (a, b) => (JsonNode)(b - a))]);
        var answer = await Ask("inspectForm", Requests.Arc().With("/measured", new JsonObject { ["angles"] = angles, ["spacings"] = spacings }.ToJsonString()));
        Assert.True((bool)answer["withinTolerance"]!);
        Assert.Null(answer["departure"]);
        Assert.Empty(answer["suspect"]!.AsArray());
        Assert.Empty(answer["corrections"]!["folds"]!.AsArray());
        Assert.Equal(0, (double)answer["fit"]!["largestHeld"]!, 6);
        Assert.Null(answer["panel"]!["text"]);
        Assert.Equal(0, (double)answer["panel"]!["change"]!["sweep"]!, 4);
    }

    [Fact]
    public async Task Two_folds_short_by_whole_steps_are_found_and_mended()
    {
        var form = await service.Form(Requests.Arc());
        double[] angles = [.. form["form"]!["stations"]!.AsArray().Select(station => (double)station!["angle"]!)];
        angles[2] -= 1.5;
        angles[5] -= 1;
        var request = Requests.Arc()
            .With("/measured", new JsonObject { ["angles"] = new JsonArray([.. angles.Select(angle => (JsonNode)angle)]) }.ToJsonString())
            .With("/tolerance", """{"closing":0.1,"vertex":0.05}""");
        var answer = await Ask("inspectForm", request);
        Assert.False((bool)answer["withinTolerance"]!);
        Assert.Equal([(3, 3), (6, 2)], answer["corrections"]!["folds"]!.AsArray().Select(fold => ((int)fold!["fold"]!, (int)fold["steps"]!)));
        Assert.True((bool)answer["corrections"]!["proven"]!);
        Assert.Equal("outside", (string?)answer["departure"]!["side"]);
        Assert.True((double)answer["panel"]!["change"]!["sweep"]! < 0);
    }

    [Fact]
    public async Task Without_a_panel_its_effect_is_not_known_and_says_why()
    {
        var answer = await Ask("inspectForm", Requests.Example("inspectForm", "swapped-and-missing"));
        Assert.Null(answer["panel"]!["planned"]);
        Assert.Contains("no panel", (string?)answer["panel"]!["text"], StringComparison.Ordinal);
        Assert.Equal(
            ["/measured/angles/0", "/measured/angles/3"],
            answer["suspect"]!.AsArray().Select(suspect => (string)suspect!["pointer"]!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Template_points_turned_and_shifted_say_the_same()
    {
        var request = Requests.Example("inspectForm", "cover-template-points");
        var moved = request.DeepClone().AsObject();
        foreach (var point in moved["measured"]!["points"]!.AsArray().SelectMany(flat => flat!.AsArray()))
        {
            var (x, y) = ((double)point![0]!, (double)point[1]!);
            (point[0], point[1]) = (100 - y, x - 40);
        }

        var (one, other) = (await Ask("inspectForm", request), await Ask("inspectForm", moved));
        foreach (var field in new[] { "asBuilt", "folds", "corrections" })
            Close(one[field]!, other[field]!, field);
    }

    [Fact]
    public async Task A_tapered_plan_measured_as_planned_at_both_ends_needs_no_correction()
    {
        var request = Requests.Example("inspectForm", "cowl-cone-both-ends");
        var form = await service.Form(new JsonObject(request.Where(field => field.Key != "measured").Select(field => KeyValuePair.Create(field.Key, field.Value?.DeepClone()))));
        var stations = form["form"]!["stations"]!.AsArray();
        var measured = new JsonObject
        {
            ["angles"] = List(stations.Select(station => (double)station!["angle"]!)),
            ["facets"] = List(stations.SkipLast(1).Select(station => (double)station!["facetEnds"]![0]!)),
            ["far"] = new JsonObject { ["facets"] = List(stations.SkipLast(1).Select(station => (double)station!["facetEnds"]![1]!)) },
        };
        var answer = await Ask("inspectForm", request.With("/measured", measured.ToJsonString()));
        Assert.True((bool)answer["withinTolerance"]!);
        Assert.Empty(answer["corrections"]!["folds"]!.AsArray());
        Assert.Equal(0, (double)answer["fit"]!["largestHeld"]!, 6);
        Assert.Equal(0, (double)answer["taper"]!["twist"]!, 6);
        Assert.Equal(0, (double)answer["panel"]!["change"]!["sweep"]!, 4);
        Assert.All(answer["taper"]!["far"]!["distances"]!.AsArray(), distance => Assert.Equal(0, (double)distance!, 6));

        static JsonArray List(IEnumerable<double> values) => new([.. values.Select(value => (JsonNode)value)]);
    }

    [Fact]
    public async Task A_tapered_lead_out_is_known_at_both_corners()
    {
        var request = Requests.Example("computeTolerances", "cowl-cone");
        var answer = await Ask("computeTolerances", request);
        var taper = answer["taper"]!;
        Assert.Equal(answer["end"]!["planned"]!.AsArray().Select(value => (double)value!), taper["near"]!["planned"]!.AsArray().Take(2).Select(value => (double)value!));
        Assert.Equal((double)answer["end"]!["reach"]!, (double)taper["near"]!["reach"]!);
        Assert.True((double)taper["far"]!["reach"]! > (double)taper["near"]!["reach"]!);
        Assert.True((double)taper["twistScatter"]! > 0);
        var check = answer["checks"]!.AsArray().Single(one => (string?)one!["id"] == "end-tolerance")!;
        Assert.Equal((double)taper["far"]!["reach"]!, (double)check["value"]!);
    }

    [Fact]
    public async Task A_taper_of_equal_ends_has_the_straight_form_s_budget()
    {
        var straight = Requests.Arc().With("/panel/springback", """{"model":"pure-bending"}""").With("/accuracy", """{"bias":0.1,"scatter":0.4,"markScatter":0}""");
        var arc = straight["panel"]!["curve"]!.ToJsonString();
        var tapered = straight.With("/panel/curve", $$"""{"type":"taper","near":{{arc}},"far":{{arc}},"length":{{straight["panel"]!["width"]}}}""");
        var (one, other) = (await Ask("computeTolerances", straight), await Ask("computeTolerances", tapered));
        foreach (var field in new[] { "closing", "end", "radius", "published" })
            Close(one[field]!, other[field]!, field);
        Assert.Null(one["taper"]);
    }

    private static void Close(JsonNode one, JsonNode other, string place)
    {
        if (one is JsonObject fields)
        {
            foreach (var (name, value) in fields.Where(field => field.Value is not null))
                Close(value!, other[name]!, place + "/" + name);
        }
        else if (one is JsonArray items)
        {
            for (var i = 0; i < items.Count; i++)
                Close(items[i]!, other[i]!, place + "/" + i);
        }
        else if (one.GetValueKind() == System.Text.Json.JsonValueKind.Number)
        {
            Assert.True(Math.Abs((double)one - (double)other) < 1e-6, place);
        }
    }

    private async Task<JsonNode> Ask(string operation, JsonNode request)
    {
        using var response = await service.Post(Requests.PathOf(operation), request.ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!;
    }
}
