using System.Globalization;
using System.Text.Json.Nodes;
using FormApi.Http;

namespace FormApi.Tests;

/// <summary>The main job through the real pipeline.</summary>
public sealed class FormsTests(Service service) : IClassFixture<Service>
{
    private const double Inch = 25.4;

    [Fact]
    public async Task The_answer_has_what_the_contract_promises()
    {
        var answer = await service.Form(Requests.Arc());
        Assert.Equal(EngineVersion.Current, (string?)answer["engine"]);
        Assert.Matches("^sha256:[0-9a-f]{64}$", (string)answer["fingerprint"]!);
        var stations = answer["form"]!["stations"]!.AsArray();
        Assert.Equal(stations.Count, (int)answer["form"]!["folds"]!);
        Assert.Equal((double)answer["form"]!["sweep"]!, stations.Sum(station => (double)station!["angle"]!), 6);
        Assert.True((double)answer["form"]!["sweep"]! > 90);
        Assert.NotEmpty(answer["checks"]!.AsArray());
        Assert.NotEmpty(answer["safety"]!.AsArray());
        Assert.NotEmpty(answer["basis"]!.AsArray());
    }

    [Theory]
    [InlineData(false, 80, 150, 600)]
    [InlineData(true, 3, 6, 24)]
    [Trait("Category", "Long")]
    public async Task A_taper_s_flat_end_is_refused_with_changes_that_give_a_plan(bool inInches, int near, int far, int length)
    {
        var arc = Requests.Arc().With("/panel/springback", """{"model":"pure-bending"}""").With("/form/stepping", """{"folds":9}""");
        var request = (inInches ? InInches(arc) : arc).With("/panel/curve", $$"""
            {
              "type": "taper", "length": {{length}}, "placement": "flush", "far": { "type": "arc", "radius": {{far}}, "sweep": 60 },
              "near": { "type": "progressive", "startRadius": null, "endRadius": {{near}}, "sweep": 60, "law": "clothoid" }
            }
            """);
        using var refused = await service.Post("/v1/forms", request.ToJsonString());
        var fault = JsonNode.Parse(await refused.Content.ReadAsStringAsync())!["errors"]![0]!;
        Assert.Equal((422, "taper.end-curve", "/panel/curve/near"), ((int)refused.StatusCode, (string)fault["code"]!, (string)fault["pointer"]!));
        foreach (var change in fault["remedy"]!["changes"]!.AsArray())
            request = request.With((string)change!["pointer"]!, change["value"]!.ToJsonString());
        Assert.Equal(15 * near, (double)request["panel"]!["curve"]!["near"]!["startRadius"]!, 6);
        Assert.Equal(60 - (60 / 225.0), (double)request["panel"]!["curve"]!["far"]!["sweep"]!, 9);
        Assert.Equal(9, (int)(await service.Form(request))["form"]!["folds"]!);
    }

    [Fact]
    public async Task Every_default_is_shown()
    {
        var request = (await service.Form(Requests.Arc()))["request"]!;
        Assert.Equal("inside", (string?)request["panel"]!["surface"]);
        Assert.Equal("satin", (string?)request["panel"]!["finish"]);
        Assert.Null(request["panel"]!["clamp"]!["gap"]);
        Assert.Equal(25, (double)request["panel"]!["clamp"]!["depth"]!);
        Assert.Equal(8, (double)request["panel"]!["scatter"]!["yield"]!);
        Assert.Equal(1, (double)request["panel"]!["tolerance"]!["angle"]!);
        Assert.Equal("wrap", (string?)request["panel"]!["springback"]!["model"]);
        Assert.Equal(3, request["panel"]!["stockSheets"]!.AsArray().Count);
        Assert.Equal(600, (double)request["form"]!["width"]!);
        Assert.Equal("equal-angle", (string?)request["form"]!["stepping"]!["rule"]);
        Assert.Equal("half", (string?)request["form"]!["stepping"]!["ends"]);
        Assert.Equal("leaf", (string?)request["brake"]!["kind"]);
        Assert.Equal(8, (double)request["brake"]!["minFacet"]!);
        Assert.Equal("edge", (string?)request["marks"]!["datum"]);
        Assert.Equal(0.5, (double)request["marks"]!["resolution"]!);
        Assert.True(request["panel"]!.AsObject().ContainsKey("lever"));
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task The_shown_request_gives_the_same_answer()
    {
        foreach (var (name, body) in Requests.Examples())
        {
            var first = await service.Form(body);
            var second = await service.Form(first["request"]!);
            Assert.True(first.ToJsonString() == second.ToJsonString(), name);
        }
    }

    [Fact]
    public async Task A_spacing_asks_for_equal_spacing()
    {
        var answer = await service.Form(Requests.Arc().With("/form/stepping", """{"spacing":15}"""));
        Assert.Equal("equal-spacing", (string?)answer["request"]!["form"]!["stepping"]!["rule"]);
    }

    [Fact]
    public async Task Field_order_and_number_spelling_change_no_byte()
    {
        var plain = Requests.Arc().ToJsonString();
        var reordered = Reversed(Requests.Arc()).ToJsonString()
            .Replace(":90", ":9.0e1", StringComparison.Ordinal).Replace(":600", ":600.000", StringComparison.Ordinal).Replace(":1.2", ":12E-1", StringComparison.Ordinal);
        Assert.NotEqual(plain, reordered);
        using var first = await service.Post("/v1/forms", plain);
        using var second = await service.Post("/v1/forms", reordered);
        Assert.Equal(await first.Content.ReadAsByteArrayAsync(), await second.Content.ReadAsByteArrayAsync());
        Assert.Equal(first.Headers.ETag, second.Headers.ETag);
    }

    [Fact]
    public async Task A_fixed_count_may_be_spelt_as_any_whole_number()
    {
        var first = await service.Form(Requests.Arc().With("/form/stepping", """{"folds":12}"""));
        var second = await service.Form(Requests.Arc().With("/form/stepping", """{"folds":1.2e1}"""));
        Assert.Equal(12, (int)first["form"]!["folds"]!);
        Assert.Equal(first.ToJsonString(), second.ToJsonString());
    }

    [Fact]
    public async Task Another_request_has_another_fingerprint()
    {
        var first = await service.Form(Requests.Arc());
        var second = await service.Form(Requests.Arc().With("/panel/curve/radius", "90.0001"));
        Assert.NotEqual((string?)first["fingerprint"], (string?)second["fingerprint"]);
    }

    [Fact]
    public async Task Inches_and_millimetres_agree()
    {
        var mm = await service.Form(Requests.Arc().With("/marks", """{"tape":"mm","resolution":0.5}""").With("/form/stepping", """{"folds":11}"""));
        var inch = await service.Form(InInches(Requests.Arc().With("/form/stepping", """{"folds":11}""")).With("/marks", """{"tape":"mm","resolution":0.5}"""));
        Close(mm["form"]!["sweep"]!, inch["form"]!["sweep"]!, 1);
        Close(mm["form"]!["blank"]!["length"]!, inch["form"]!["blank"]!["length"]!, Inch);
        Close(mm["form"]!["blank"]!["area"]!, inch["form"]!["blank"]!["area"]!, Inch * Inch);
        Close(mm["form"]!["blank"]!["mass"]!, inch["form"]!["blank"]!["mass"]!, 0.45359237);
        Close(mm["panel"]!["pull"]!["force"]!, inch["panel"]!["pull"]!["force"]!, 4.4482216152605);
        Close(mm["panel"]!["pull"]!["momentPerWidth"]!, inch["panel"]!["pull"]!["momentPerWidth"]!, 4.4482216152605);
        Close(mm["panel"]!["pull"]!["energyReleased"]!, inch["panel"]!["pull"]!["energyReleased"]!, 4.4482216152605 * 0.3048);
        foreach (var (one, other) in mm["form"]!["stations"]!.AsArray().Zip(inch["form"]!["stations"]!.AsArray()))
        {
            Close(one!["at"]!, other!["at"]!, Inch);
            Close(one["angle"]!, other["angle"]!, 1);
            Close(one["stopAngle"]!, other["stopAngle"]!, 1);
            Assert.Equal((string?)one["markText"], (string?)other["markText"]);
        }

        Assert.Equal(
            mm["checks"]!.AsArray().Select(check => (string?)check!["id"] + check["verdict"]),
            inch["checks"]!.AsArray().Select(check => (string?)check!["id"] + check["verdict"]));
        Assert.Equal("in", (string?)inch["checks"]!.AsArray().First(check => (string?)check!["id"] == "brake-length")!["unit"]);
    }

    [Fact]
    public async Task An_inch_tape_reads_in_64ths()
    {
        var answer = await service.Form(InInches(Requests.Arc()));
        Assert.Equal(0.015625, (double)answer["request"]!["marks"]!["resolution"]!);
        Assert.Matches(@"^\d+( \d+/\d+)?$", (string)answer["form"]!["stations"]![0]!["markText"]!);
        Assert.DoesNotContain(" mm", answer["checks"]!.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_gauge_stands_for_its_thickness()
    {
        var gauge = await service.Form(Requests.Arc().With("/panel/thickness", null).With("/panel/gauge", "18"));
        Assert.Equal("us-standard", (string?)gauge["request"]!["panel"]!["gaugeSystem"]);
        var thickness = (double)gauge["panel"]!["thickness"]!;
        Assert.Equal(1.27, thickness, 9);
        var plain = await service.Form(Requests.Arc().With("/panel/thickness", thickness.ToString(CultureInfo.InvariantCulture)));
        Assert.Equal((double)plain["form"]!["sweep"]!, (double)gauge["form"]!["sweep"]!, 9);
    }

    [Fact]
    public async Task An_overridden_property_is_the_callers()
    {
        var answer = await service.Form(Requests.Arc().With("/panel/material/yield", "310"));
        Assert.NotEqual((double)(await service.Form(Requests.Arc()))["form"]!["sweep"]!, (double)answer["form"]!["sweep"]!);
        Assert.Contains(
            answer["basis"]!.AsArray(),
            basis => (string?)basis!["quantity"] == "panel.material.yield" && (string?)basis["status"] == "caller");
    }

    [Fact]
    public async Task What_cannot_be_made_comes_back_with_its_stations()
    {
        var answer = await service.Form(Requests.Arc().With("/brake/length", "100"));
        Assert.Equal("cannot-be-made", (string?)answer["verdict"]);
        Assert.NotEmpty(answer["form"]!["stations"]!.AsArray());
        var failed = answer["checks"]!.AsArray().Where(check => (string?)check!["verdict"] == "fail").ToArray();
        Assert.NotEmpty(failed);
        Assert.All(failed, check => Assert.False(string.IsNullOrEmpty((string?)check!["remedy"]!["text"])));
    }

    private static JsonObject InInches(JsonObject request)
    {
        var lengths = new[]
        {
            "/panel/thickness", "/panel/width", "/panel/leadIn", "/panel/leadOut", "/panel/curve/radius",
            "/form/thickness", "/form/foldRadius", "/form/leadIn", "/form/leadOut", "/brake/length",
        };
        var copy = request.With("/units", "\"in\"");
        foreach (var pointer in lengths)
        {
            var value = pointer.Split('/')[1..].Aggregate((JsonNode)copy, (node, step) => node[step]!).GetValue<double>();
            copy = copy.With(pointer, (value / Inch).ToString("R", CultureInfo.InvariantCulture));
        }

        return copy;
    }

    private static void Close(JsonNode mm, JsonNode inch, double factor)
    {
        var (one, other) = ((double)mm, (double)inch * factor);
        Assert.True(Math.Abs(one - other) <= 1e-6 * Math.Max(1, Math.Abs(one)), $"{one} against {other}");
    }

    private static JsonNode Reversed(JsonNode node) => node switch
    {
        JsonObject fields => new JsonObject(fields.Reverse().Select(field => KeyValuePair.Create(field.Key, field.Value is null ? null : Reversed(field.Value)))!),
        _ => node.DeepClone(),
    };
}
