using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>The steps by which a brake folds a form, through the real pipeline.</summary>
public sealed class ProgramsTests(Service service) : IClassFixture<Service>
{
    private const string Square = "[[0,0],[0,40],[-60,40],[-60,0]]";

    // A change to a form given by its stations on a leaf brake, the value as JSON or null to remove the field.
    public static TheoryData<string, string?, int, string, string> BadPrograms { get; } = new()
    {
        { "/stations", null, 400, "missing-field", "/panel" },
        { "/stations", "[null]", 400, "null-not-allowed", "/stations/0" },
        { "/stations/0/stopAngle", "9", 400, "unknown-field", "/stations/0/stopAngle" },
        { "/stations/1/facetAfter", null, 400, "missing-field", "/stations/1/facetAfter" },
        { "/form/width", null, 400, "missing-field", "/form/width" },
        { "/brake", null, 400, "missing-field", "/brake" },
        { "/brake/tools/beem", "[]", 400, "unknown-field", "/brake/tools/beem" },
        { "/brake/tools/beam", "[[0,0],[1]]", 400, "wrong-type", "/brake/tools/beam/1" },
        { "/brake/tools/beam", "[[0,0],null,[1,1]]", 400, "null-not-allowed", "/brake/tools/beam/1" },
        { "/brake/tools/openEnd", "1", 400, "wrong-type", "/brake/tools/openEnd" },
        { "/brake/tools/gauge", """{"min":75}""", 400, "missing-field", "/brake/tools/gauge/max" },
        { "/predict", "true", 400, "unknown-field", "/predict" },
        { "/stations", "[]", 422, "out-of-range", "/stations" },
        { "/stations/0/angle", "0", 422, "out-of-range", "/stations/0/angle" },
        { "/stations/0/facetAfter", "0.5", 422, "program.facet-too-short", "/stations/0/facetAfter" },
        { "/form/leadIn", "0.1", 422, "program.facet-too-short", "/form/leadIn" },
        { "/form/leadOut", "61", 422, "contradicts", "/stations/5/facetAfter" },
        { "/form/foldRadius", "9000", 422, "program.stays-elastic", "/form/foldRadius" },
        { "/form/stop", """{"offset":-5,"slope":1}""", 422, "program.springs-inwards", "/form/stop" },
        { "/form/stop", """{"offset":20,"slope":10}""", 422, "program.stop-past-half-turn", "/form" },
        { "/form/stop", """{"offset":1}""", 422, "missing-property", "/form/stop/slope" },
        { "/form/stop", """{"slope":1,"rounding":"sum"}""", 422, "missing-property", "/form/stop/offset" },
        { "/form/stop", """{"rounding":"up"}""", 400, "unknown-value", "/form/stop/rounding" },
        { "/panel", """{"material":{"id":"ss-304"},"thickness":1,"width":600,"leadIn":80,"leadOut":80,"curve":{"type":"arc","radius":90,"sweep":60}}""", 422, "not-applicable", "/panel" },
        { "/marks", """{"datum":"edge"}""", 422, "not-applicable", "/marks" },
        { "/form/stepping", """{"folds":6}""", 422, "not-applicable", "/form/stepping" },
        { "/brake/dieOpening", "12", 422, "not-applicable", "/brake/dieOpening" },
        { "/brake/tools/punch", "[[0,0],[5,9],[-5,9]]", 422, "not-applicable", "/brake/tools/punch" },
        { "/brake/tools/holder", """{"width":50,"height":70}""", 422, "not-applicable", "/brake/tools/holder" },
        { "/brake/tools/forceCapacity", "90000", 422, "not-applicable", "/brake/tools/forceCapacity" },
        { "/brake/tools/clearance", "-1", 422, "out-of-range", "/brake/tools/clearance" },
        { "/brake/tools/lever", "0", 422, "out-of-range", "/brake/tools/lever" },
        { "/brake/tools/lever", "1e400", 422, "not-finite", "/brake/tools/lever" },
        { "/brake/tools/overTravel", "11", 422, "out-of-range", "/brake/tools/overTravel" },
        { "/brake/tools/gauge", """{"min":600,"max":75}""", 422, "contradicts", "/brake/tools/gauge/max" },
        { "/brake/tools/beam", "[[0,0],[1,1]]", 422, "out-of-range", "/brake/tools/beam" },
        { "/brake/tools/beam", "[[0,0],[0,40],[-60,1e5]]", 422, "out-of-range", "/brake/tools/beam/2/1" },
        { "/brake/tools/beam", "[[0,0],[0,1e400],[-60,40]]", 422, "not-finite", "/brake/tools/beam/1/1" },
        { "/brake/tools/beam", "[[0,0],[-60,40],[0,40],[-60,0]]", 422, "outline.crosses-itself", "/brake/tools/beam/2" },
        { "/brake/tools/beam", "[[0,0],[0,40],[-60,40],[-60,0],[0,0]]", 422, "outline.repeated-corner", "/brake/tools/beam/0" },
        { "/brake/tools/beam", "[[5,0],[5,40],[-60,40],[-60,0]]", 422, "outline.off-its-place", "/brake/tools/beam" },
        { "/brake/tools/beam", "[[0,9],[0,40],[-60,40],[-60,9]]", 422, "outline.off-its-place", "/brake/tools/beam" },
        { "/brake", """{"kind":"press","length":1250,"tools":{"beam":[[0,0],[0,40],[-60,40],[-60,0]]}}""", 422, "not-applicable", "/brake/tools/beam" },
        { "/brake", """{"kind":"press","length":1250,"tools":{"minLand":8}}""", 422, "not-applicable", "/brake/tools/minLand" },
        { "/brake", """{"kind":"press","length":1250,"tools":{"punch":[[1,0],[5,9],[-5,9]]}}""", 422, "outline.off-its-place", "/brake/tools/punch" },
        { "/brake", """{"kind":"press","length":1250,"tools":{"die":{"width":0,"height":60}}}""", 422, "out-of-range", "/brake/tools/die/width" },
        { "/brake/length", "500", 422, "brake-length", "/brake/length" },
        { "/brake/minFacet", "40", 422, "minimum-facet", "/brake" },
        { "/form/material", """{"id":"steel-cr-cs","minRadiusOverThickness":4}""", 422, "fold-radius", "/form/foldRadius" },
        { "/brake/capacity", """{"thickness":0.5,"ultimate":300}""", 422, "capacity", "/brake" },
    };

    [Theory]
    [MemberData(nameof(BadPrograms))]
    public async Task Bad_values_are_named(string place, string? json, int status, string code, string faultAt)
    {
        using var response = await service.Post("/v1/programs", Requests.Program().With(place, json).ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(status == (int)response.StatusCode, text);
        var problem = JsonNode.Parse(text)!;
        var fault = problem["errors"]!.AsArray().FirstOrDefault(error => (string?)error!["pointer"] == faultAt);
        Assert.True(fault is not null, text);
        Assert.Equal(code, (string?)fault["code"]);
        Assert.False(string.IsNullOrEmpty((string?)fault["text"]));
        Assert.DoesNotContain("Figure", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_fold_is_made_once_and_clears_everything()
    {
        foreach (var (name, body) in Requests.Programs().Append(("stations", Requests.Program())))
        {
            var answer = await service.Program(body);
            var steps = answer["steps"]!.AsArray();
            var folds = steps.Select(step => (int)step!["fold"]!).Order().ToArray();
            Assert.Equal(Enumerable.Range(1, folds.Length), folds);
            Assert.Equal("load", (string?)steps[0]!["handling"]);
            foreach (var step in steps)
            {
                Assert.True((double)step!["clearance"]! > 0, name);
                Assert.NotEqual((string)step["edgeInFront"]!, (string)step["gaugedEdge"]!);
                Assert.True((double)step["stopAngle"]! >= (double)step["angle"]!);
                Assert.Equal("inside", (string?)step["faceUp"]);
                Assert.DoesNotContain("Figure", (string)step["text"]!, StringComparison.Ordinal);
                Assert.DoesNotContain(step["checks"]!.AsArray(), check => (string)check!["verdict"]! == "pass");
            }

            Assert.NotEmpty(answer["checks"]!.AsArray());
            var program = answer["program"]!;
            Assert.Equal(steps.Sum(step => (int)step!["handlingCost"]!), (int)program["handlingCost"]!);
            Assert.Equal(steps.Count(step => (string?)step!["handling"] == "turn"), (int)program["turns"]!);
            Assert.Equal(steps.Count(step => (bool)step!["stopChange"]!), (int)program["stopChanges"]!);
            Assert.Equal((int)program["stopChanges"]! + 1, program["stopGroups"]!.AsArray().Count);
            Assert.Equal(steps.Min(step => (double)step!["clearance"]!), (double)program["clearance"]!);
            Assert.Contains(program["ordersTried"]!.AsArray(), order => (string?)order!["name"] == (string?)program["orderName"] && (bool)order!["whole"]!);
            var worst = answer["checks"]!.AsArray().Any(check => (string?)check!["verdict"] == "warn") ? "attention" : "ready";
            Assert.Equal(worst, (string?)answer["verdict"]);
        }
    }

    [Fact]
    public async Task Each_kind_of_brake_has_its_own_figures()
    {
        var leaf = (await service.Program(Requests.Program()))["steps"]![0]!;
        var press = (await service.Program(Requests.Program().With("/brake/kind", "\"press\"")))["steps"]![0]!;
        foreach (var field in (string[])["moment", "handleForce", "leafForce", "clampForce"])
        {
            Assert.True((double)leaf[field]! > 0);
            Assert.Null(press[field]);
        }

        foreach (var field in (string[])["includedAngle", "springbackAllowance", "depth", "force", "forceLow"])
        {
            Assert.Null(leaf[field]);
            Assert.True((double)press[field]! > 0);
        }

        // 2/√3 · 330 MPa · 2² mm² / 4 · 600 mm with the table's ultimate strength; the press by 1.33 UTS W t²/V, V = 6 t.
        var ultimate = (double)leaf["moment"]! * Math.Sqrt(3) / 2 / 600;
        Assert.Equal((double)leaf["moment"]! / 500, (double)leaf["handleForce"]!, 1e-6);
        Assert.Equal(1.33 * ultimate * 600 * 4 / 12, (double)press["force"]!, 1e-3);
        Assert.Equal(180, (double)press["includedAngle"]! + (double)press["stopAngle"]!, 1e-8);
        Assert.Equal((double)press["stopAngle"]!, (double)press["angle"]! + (double)press["springbackAllowance"]!, 1e-8);
    }

    [Fact]
    public async Task A_planned_form_is_programmed_as_its_own_stations_are()
    {
        var request = Requests.Arc().With("/form/leadIn", "90").With("/form/leadOut", "90").With("/panel/curve/sweep", "45").With("/panel/leadOut", "200");
        var form = await service.Form(request);
        var planned = await service.Program(request);
        var stations = form["form"]!["stations"]!.AsArray().Select(station => new JsonObject
        {
            ["angle"] = station!["angle"]!.DeepClone(),
            ["facetAfter"] = station["facetAfter"]!.DeepClone(),
        });
        var given = await service.Program(
            request.With("/panel", null).With("/form/width", "600").With("/stations", new JsonArray([.. stations]).ToJsonString()));
        var (one, other) = (planned["steps"]!.AsArray(), given["steps"]!.AsArray());
        Assert.Equal(one.Count, other.Count);
        for (var i = 0; i < one.Count; i++)
        {
            Assert.Equal((int)one[i]!["fold"]!, (int)other[i]!["fold"]!);
            foreach (var field in new[] { "gaugeDistance", "angle", "stopAngle", "clearance", "frontRun", "backRun", "moment" })
                Assert.Equal((double)one[i]![field]!, (double)other[i]![field]!, 1e-4);
            var station = form["form"]!["stations"]![(int)one[i]!["fold"]! - 1]!;
            Assert.Equal((double)station["stopAngle"]!, (double)one[i]!["stopAngle"]!);
        }
    }

    [Fact]
    public async Task The_shown_request_gives_the_same_answer()
    {
        foreach (var body in Requests.Programs().Select(example => example.Body).Append(Requests.Program()).Append(Requests.Program().With("/brake/kind", "\"press\"")))
        {
            var first = await service.Program(body);
            Assert.Equal(first.ToJsonString(), (await service.Program(first["request"]!)).ToJsonString());
            Assert.NotNull(first["request"]!["brake"]!["tools"]!["gauge"]);
        }
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task Steps_groups_stations_and_csv_set_the_stop_alike()
    {
        foreach (var rounding in new[] { "each", "sum" })
        {
            var request = Requests.Arc().With("/form/stop", $$"""{"rounding":"{{rounding}}"}""").With("/brake/stopResolution", "0.75");
            var form = (await service.Form(request))["form"]!;
            var answer = await service.Program(request);
            var stations = form["stations"]!.AsArray();
            foreach (var step in answer["steps"]!.AsArray())
            {
                var station = stations[(int)step!["fold"]! - 1]!;
                Assert.Equal((double)station["stopAngle"]!, (double)step["stopAngle"]!);
                Assert.Equal((double)station["stopSetting"]!, (double)step["stopSetting"]!);
                var steps = (double)step["stopSetting"]! / 0.75;
                Assert.Equal(Math.Round(steps), steps, 1e-6);
            }

            foreach (var setting in form["stopSettings"]!.AsArray())
                Assert.All(setting!["stations"]!.AsArray(), number => Assert.Equal((double)setting["stopSetting"]!, (double)stations[(int)number! - 1]!["stopSetting"]!));
            foreach (var group in answer["program"]!["stopGroups"]!.AsArray())
                Assert.All(group!["steps"]!.AsArray(), number => Assert.Equal((double)group["stopSetting"]!, (double)answer["steps"]![(int)number! - 1]!["stopSetting"]!));
            Assert.Equal((double)form["stopRounding"]!, (double)answer["program"]!["stopRounding"]!, 1e-9);
            if (rounding == "sum")
                Assert.InRange(Math.Abs((double)form["stopRounding"]!), 0, 0.375);
            Assert.Equal(rounding, (string?)answer["request"]!["form"]!["stop"]!["rounding"]);
            using var response = await Ask("text/csv", request);
            var lines = (await response.Content.ReadAsStringAsync()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
            var column = lines[0].Split(',').ToList().IndexOf("stop setting [deg]");
            for (var i = 1; i < lines.Length; i++)
                Assert.Equal((double)answer["steps"]![i - 1]!["stopSetting"]!, double.Parse(lines[i].Split(',')[column], CultureInfo.InvariantCulture), 1e-8);
        }
    }

    // The search counts its work and reads no clock: a busy machine answers later, never otherwise.
    [Fact]
    public async Task The_same_request_has_the_same_bytes_on_a_busy_machine()
    {
        var request = Requests.Program().With("/brake/kind", "\"press\"").ToJsonString();
        using var quiet = await service.Post("/v1/programs", request);
        var expected = await quiet.Content.ReadAsStringAsync();
        Assert.True((int)quiet.StatusCode == 200, expected);
        using var stop = new CancellationTokenSource();
        Thread[] busy = [.. Enumerable.Range(0, 2).Select(_ => new Thread(() => { while (!stop.IsCancellationRequested) { } }))];
        foreach (var thread in busy)
            thread.Start();
        try
        {
            var responses = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => service.Post("/v1/programs", request)));
            foreach (var response in responses)
                Assert.Equal(expected, await response.Content.ReadAsStringAsync());
        }
        finally
        {
            await stop.CancelAsync();
        }
    }

    [Fact]
    public async Task An_answer_says_which_orders_were_searched()
    {
        var few = await service.Program(Requests.Program());
        Assert.Equal("all orders", (string?)few["program"]!["searched"]);
        Assert.True((bool)few["program"]!["searchComplete"]!);
    }

    [Fact]
    public async Task Inches_are_millimetres_in_other_words()
    {
        var mm = await service.Program(Requests.Program());
        var request = Requests.Program().With("/units", "\"in\"");
        foreach (var place in new[] { "/form/thickness", "/form/foldRadius", "/form/leadIn", "/form/leadOut", "/form/width", "/brake/length" })
            request = request.With(place, Inches(request, place));
        for (var i = 0; i < request["stations"]!.AsArray().Count; i++)
            request = request.With($"/stations/{i}/facetAfter", Inches(request, $"/stations/{i}/facetAfter"));
        var inch = await service.Program(request);
        var (one, other) = (mm["steps"]!.AsArray(), inch["steps"]!.AsArray());
        for (var i = 0; i < one.Count; i++)
        {
            Assert.Equal((double)one[i]!["gaugeDistance"]!, 25.4 * (double)other[i]!["gaugeDistance"]!, 1e-6);
            Assert.Equal((double)one[i]!["handleForce"]!, 4.4482216152605 * (double)other[i]!["handleForce"]!, 1e-6);
            Assert.Equal((double)one[i]!["moment"]!, 25.4 * 4.4482216152605 * (double)other[i]!["moment"]!, 1e-4);
            Assert.EndsWith(" in. Set the stop to", ((string)other[0]!["text"]!)[..((string)other[0]!["text"]!).IndexOf("Set the stop to", StringComparison.Ordinal)] + "Set the stop to", StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task What_cannot_be_folded_is_refused_with_every_fold_at_fault()
    {
        foreach (var media in (string[])["application/json", "text/csv", "image/svg+xml", "application/pdf"])
        {
            using var response = await Ask(media, Requests.Hoop());
            var text = await response.Content.ReadAsStringAsync();
            Assert.True((int)response.StatusCode == 422, text);
            Assert.Equal("application/problem+json", response.Content.Headers.ContentType!.MediaType);
            var problem = JsonNode.Parse(text)!;
            Assert.Equal("program-impossible", (string?)problem["code"]);
            Assert.Equal("/problems/program-impossible", (string?)problem["type"]);
            var impossible = problem["impossible"]!;
            Assert.True((bool)impossible["proven"]!);
            Assert.True((int)impossible["states"]! > 0);
            var folds = impossible["folds"]!.AsArray();
            Assert.NotEmpty(folds);
            Assert.Equal(folds.Count, problem["errors"]!.AsArray().Count);
            foreach (var (fold, fault) in folds.Zip(problem["errors"]!.AsArray()))
            {
                Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"/stations/{(int)fold!["fold"]! - 1}"), (string?)fault!["pointer"]);
                Assert.Equal((string)fold["text"]!, (string?)fault["text"]);
                Assert.Equal((string)fold["remedy"]!["text"]!, (string?)fault["allowed"]);
                Assert.NotEmpty((string)fold["remedy"]!["text"]!);
            }

            Assert.All(impossible["ordersTried"]!.AsArray(), order => Assert.False((bool)order!["whole"]!));
        }
    }

    [Fact]
    public async Task What_was_not_found_says_where_the_orders_failed()
    {
        // A beam that hardly lifts lets nothing be moved: no simple way, which proves nothing.
        using var response = await Ask("application/json", Requests.Program().With("/brake/tools/opening", "2"));
        var problem = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal("program-not-found", (string?)problem["code"]);
        var impossible = problem["impossible"]!;
        Assert.False((bool)impossible["proven"]!);
        Assert.NotEmpty(problem["errors"]!.AsArray());
        foreach (var fault in problem["errors"]!.AsArray())
        {
            var fold = int.Parse(((string)fault!["pointer"]!)["/stations/".Length..], CultureInfo.InvariantCulture) + 1;
            Assert.Contains(
                impossible["ordersTried"]!.AsArray(),
                order => (int?)order!["failedFold"] == fold && (string?)order["failedCheck"] == (string?)fault["code"]);
            Assert.NotEmpty((string)fault["allowed"]!);
        }
    }

    [Fact]
    public async Task An_edge_shorter_than_the_die_is_refused_with_what_it_needs()
    {
        // 4 mm of lead over a 12 mm opening: the shoulder finds no flat.
        var request = Requests.Program().With("/brake", """{"kind":"press","length":1250,"dieOpening":12,"minFacet":3}""").With("/form/leadIn", "4.3");
        using var response = await Ask("application/json", request);
        var problem = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal("program-impossible", (string?)problem["code"]);
        Assert.Contains(problem["errors"]!.AsArray(), fault => (string?)fault!["pointer"] == "/stations/0" && (string?)fault["code"] is "front-run" or "back-run");
    }

    [Fact]
    public async Task A_form_with_a_failed_check_is_refused_with_each_of_them()
    {
        foreach (var media in (string[])["application/json", "text/csv", "image/svg+xml"])
        {
            using var response = await Ask(media, Requests.Arc().With("/brake/length", "100").With("/form/foldRadius", "1.1"));
            Assert.Equal(422, (int)response.StatusCode);
            var problem = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
            Assert.Equal("cannot-be-made", (string?)problem["code"]);
            Assert.Null(problem["impossible"]);
            var form = await service.Form(Requests.Arc().With("/brake/length", "100").With("/form/foldRadius", "1.1"));
            var failed = form["checks"]!.AsArray().Where(check => (string?)check!["verdict"] == "fail").ToArray();
            Assert.NotEmpty(failed);
            Assert.Equal(
                failed.Select(check => ((string)check!["id"]!, (string)check["text"]!, (string)check["remedy"]!["text"]!)),
                problem["errors"]!.AsArray().Select(fault => ((string)fault!["code"]!, (string)fault["text"]!, (string)fault["allowed"]!)));
        }
    }

    [Theory]
    [InlineData("leaf")]
    [InlineData("press")]
    public async Task Every_fold_of_a_taper_is_set_by_two_marks_and_swung_to_from_the_last(string kind)
    {
        var request = Taper().With("/brake/kind", $"\"{kind}\"");
        var answer = await service.Program(request);
        var form = (await service.Form(Taper()))["form"]!;
        var steps = answer["steps"]!.AsArray();
        Assert.Equal(form["stations"]!.AsArray().Count, steps.Count);
        for (var i = 0; i < steps.Count; i++)
        {
            var (step, station) = (steps[i]!, form["stations"]![(int)steps[i]!["fold"]! - 1]!);
            var marks = step["marks"]!;
            Assert.Equal(("mark", false), ((string)step["gaugedBy"]!, (bool)step["gaugeInRange"]!));
            if (kind == "press")
            {
                Assert.Equal((double)station["baseNear"]!, (double)marks["near"]!, 1e-6);
                Assert.Equal((double)station["baseFar"]!, (double)marks["far"]!, 1e-6);
                Assert.Equal((string)station["markTextFar"]!, (string)marks["farText"]!);
            }

            Assert.Contains($"{marks["nearText"]} mm on the near edge, {marks["farText"]} mm on the far edge", (string)step["text"]!, StringComparison.Ordinal);
            Assert.Equal(i > 0, step["swing"] is not null);
            Assert.Equal(step["nearest"] is not null, step["section"] is not null);
            Assert.DoesNotContain(step["checks"]!.AsArray(), check => ((string)check!["id"]!).StartsWith("gauge", StringComparison.Ordinal));
        }

        Assert.NotNull((await service.Form(Taper()))["links"]!["program"]);
        using var file = await Ask("text/csv", request);
        var lines = (await file.Content.ReadAsStringAsync()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        var headings = lines[0].Replace("\"force, low", "\"force low", StringComparison.Ordinal).Split(',').ToList();
        var cells = lines[2].Split(',');
        Assert.Equal((double)steps[1]!["marks"]!["near"]!, double.Parse(cells[headings.IndexOf("near mark [mm]")], CultureInfo.InvariantCulture), 1e-8);
        Assert.Equal((double)steps[1]!["marks"]!["far"]!, double.Parse(cells[headings.IndexOf("far mark [mm]")], CultureInfo.InvariantCulture), 1e-8);
        Assert.Equal((double)steps[1]!["swing"]!, double.Parse(cells[headings.IndexOf("swing [deg]")], CultureInfo.InvariantCulture), 1e-8);
    }

    [Fact]
    public async Task Parallel_folds_have_no_marks_and_no_swing()
    {
        var answer = await service.Program(Requests.Program());
        Assert.All(answer["steps"]!.AsArray(), step => Assert.All(["marks", "swing", "section"], field => Assert.False(step!.AsObject().ContainsKey(field))));
    }

    private static JsonObject Taper() => Requests.Arc()
        .With("/panel/width", null)
        .With("/panel/springback", """{"model":"pure-bending"}""")
        .With("/panel/curve", """{"type":"taper","near":{"type":"arc","radius":90,"sweep":60},"far":{"type":"arc","radius":120,"sweep":60},"length":400}""");

    [Fact]
    public async Task More_folds_than_can_be_told_apart_are_refused()
    {
        using var response = await Ask("application/json", Requests.Arc().With("/panel/curve/radius", "9000").With("/form/stepping", """{"folds":129}"""));
        var problem = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Contains((string?)problem["code"], (string[])["program.too-many-folds", "cannot-be-made"]);
        Assert.Equal(422, (int)response.StatusCode);
    }

    [Fact]
    public async Task The_callers_own_tools_count()
    {
        var plain = await service.Program(Requests.Program());
        var slim = await service.Program(Requests.Program().With("/brake/tools/beam", Square));
        Assert.Equal(JsonNode.Parse(Square)!.ToJsonString(), slim["request"]!["brake"]!["tools"]!["beam"]!.ToJsonString());
        Assert.True((double)slim["program"]!["clearance"]! <= (double)plain["program"]!["clearance"]!);
        // A beam as high as a wall, its face upright, stands where the front has to turn.
        using var wall = await Ask("application/json", Requests.Program().With("/brake/tools/beam", "[[0,0],[60,10],[60,400],[-60,400],[-60,0]]"));
        Assert.Equal(422, (int)wall.StatusCode);
    }

    [Fact]
    public async Task Csv_has_a_line_for_every_step()
    {
        var answer = await service.Program(Requests.Program());
        using var response = await Ask("text/csv", Requests.Program());
        Assert.Equal("text/csv", response.Content.Headers.ContentType!.MediaType);
        var lines = (await response.Content.ReadAsStringAsync()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(answer["steps"]!.AsArray().Count + 1, lines.Length);
        Assert.Contains("gauge distance [mm]", lines[0], StringComparison.Ordinal);
        for (var i = 1; i < lines.Length; i++)
        {
            var cells = lines[i].Split(',');
            Assert.Equal((int)answer["steps"]![i - 1]!["fold"]!, int.Parse(cells[1], CultureInfo.InvariantCulture));
            Assert.Equal((string)answer["steps"]![i - 1]!["gaugedBy"]!, cells[6]);
            Assert.Equal((double)answer["steps"]![i - 1]!["gaugeDistance"]!, double.Parse(cells[7], CultureInfo.InvariantCulture), 1e-8);
        }
    }

    [Theory]
    [InlineData("image/svg+xml", "<svg", "svg")]
    [InlineData("application/pdf", "%PDF-", "pdf")]
    [InlineData("text/csv", "number,fold", "csv")]
    [InlineData("image/png;q=1, text/csv;q=0.4, image/svg+xml;q=0.9", "<svg", "svg")]
    [InlineData("application/json;q=0.1, text/*;q=0.5", "number,fold", "csv")]
    [InlineData("*/*", "{\"engine\"", "json")]
    public async Task Every_media_type_is_negotiated_and_tagged(string accept, string beginning, string extension)
    {
        using var response = await Ask(accept, Requests.Program());
        var text = Encoding.Latin1.GetString(await response.Content.ReadAsByteArrayAsync());
        Assert.True((int)response.StatusCode == 200, text);
        Assert.StartsWith(beginning, text, StringComparison.Ordinal);
        var fingerprint = ((string)(await service.Program(Requests.Program()))["fingerprint"]!)["sha256:".Length..];
        Assert.Equal($"\"{fingerprint}-{extension}\"", response.Headers.ETag!.Tag);
        if (extension != "json")
            Assert.StartsWith("program-", response.Content.Headers.ContentDisposition!.FileName!.Trim('"'), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Media_types_that_are_not_there_are_answered_with_those_that_are()
    {
        using var response = await Ask("model/gltf-binary", Requests.Program());
        Assert.Equal(406, (int)response.StatusCode);
        Assert.Contains("text/csv", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Paper_is_a4_or_letter()
    {
        using var response = await service.Post("/v1/programs?paper=parchment", Requests.Program().ToJsonString());
        Assert.Equal(400, (int)response.StatusCode);
    }

    [Fact]
    public async Task Both_new_kinds_of_problem_are_explained()
    {
        foreach (var code in (string[])["cannot-be-made", "program-impossible", "program-not-found"])
        {
            using var explanation = await service.Client.GetAsync("/problems/" + code);
            Assert.Equal(200, (int)explanation.StatusCode);
        }
    }

    private static string Inches(JsonNode request, string place)
    {
        var here = request;
        foreach (var step in place.Split('/')[1..])
            here = here is JsonArray array ? array[int.Parse(step, CultureInfo.InvariantCulture)]! : here[step]!;
        return ((double)here / 25.4).ToString("R", CultureInfo.InvariantCulture);
    }

    private async Task<HttpResponseMessage> Ask(string accept, JsonNode body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/programs");
        request.Content = new StringContent(body.ToJsonString(), Encoding.UTF8, "application/json");
        foreach (var range in accept.Split(','))
            request.Headers.Accept.Add(MediaTypeWithQualityHeaderValue.Parse(range.Trim()));
        return await service.Client.SendAsync(request);
    }
}
