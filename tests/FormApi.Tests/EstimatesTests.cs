using System.Globalization;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Time and cost, through the real pipeline.</summary>
public sealed class EstimatesTests(Service service) : IClassFixture<Service>
{
    private const string Batch = "cab-corner-batch";

    private static readonly string[] CostParts = ["formLabour", "formMaterial", "setUpLabour", "trialLabour", "panelLabour", "panelMaterial", "overhead"];

    private static readonly string[] Supports = ["assumption", "common-practice", "from-memory"];

    // A change to the batch of cab corners, the value as JSON or null to remove the field.
    public static TheoryData<string, string?, int, string, string> Bad { get; } = new()
    {
        { "/panel/width", null, 400, "missing-field", "/panel/width" },
        { "/predict", "true", 400, "unknown-field", "/predict" },
        { "/batch", """{"pieces":3}""", 400, "unknown-field", "/batch" },
        { "/pieces", "3", 400, "wrong-type", "/pieces" },
        { "/pieces", "[1,1.5]", 400, "wrong-type", "/pieces/1" },
        { "/rates/panelSheet/buy", "\"by-the-pound\"", 400, "unknown-value", "/rates/panelSheet/buy" },
        { "/rolling/hour", null, 400, "missing-field", "/rolling/hour" },
        { "/rates/form/bending", """{"each":1}""", 400, "unknown-field", "/rates/form/bending" },
        { "/rates/form/folding/each", "\"1\"", 400, "wrong-type", "/rates/form/folding/each" },
        { "/learning/model", "\"crawford\"", 400, "unknown-value", "/learning/model" },
        { "/otherMethod/costPerPiece", null, 400, "missing-field", "/otherMethod/costPerPiece" },
        { "/panel/stockSheets", "[null]", 400, "null-not-allowed", "/panel/stockSheets/0" },
        { "/pieces", "[1,0]", 422, "out-of-range", "/pieces/1" },
        { "/pieces", "[100001]", 422, "out-of-range", "/pieces/0" },
        { "/pieces", "[]", 422, "out-of-range", "/pieces" },
        { "/pieces", "[1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21]", 422, "out-of-range", "/pieces" },
        { "/rates/overhead", "-0.1", 422, "out-of-range", "/rates/overhead" },
        { "/rates/formSheet/scrapShare", "1", 422, "out-of-range", "/rates/formSheet/scrapShare" },
        { "/rates/panelSheet/scrapShare", "0.1", 422, "not-applicable", "/rates/panelSheet/scrapShare" },
        { "/counts/trials", "-1", 422, "out-of-range", "/counts/trials" },
        { "/counts/people", "7", 422, "out-of-range", "/counts/people" },
        { "/counts/clamps", "0", 422, "out-of-range", "/counts/clamps" },
        { "/bumping", """{"angle":0}""", 422, "out-of-range", "/bumping/angle" },
        { "/rolling/perPanel", "-1", 422, "out-of-range", "/rolling/perPanel" },
        { "/rates/labour", "-1", 422, "out-of-range", "/rates/labour" },
        { "/rates/labour", "1e400", 422, "not-finite", "/rates/labour" },
        { "/rates/form/folding/each", "-1", 422, "out-of-range", "/rates/form/folding/each" },
        { "/rates/panel/trimming", """{"fixed":-1}""", 422, "out-of-range", "/rates/panel/trimming/fixed" },
        { "/rates/formSheet/perSheet", "40", 422, "choose-one", "/rates/formSheet/perSheet" },
        { "/rates/formSheet/sheet", "\"none such\"", 422, "estimate.unknown-sheet", "/rates/formSheet/sheet" },
        { "/rates/panelSheet/sheet", null, 422, "missing-property", "/rates/panelSheet/sheet" },
        { "/rates/panelSheet/sheet", "\"none such\"", 422, "estimate.unknown-sheet", "/rates/panelSheet/sheet" },
        { "/panel/stockSheets", """[{"length":100,"width":100,"name":"2500 × 1250 mm"}]""", 422, "estimate.sheet-too-small", "/rates/panelSheet/sheet" },
        { "/counts/handlings", "0", 422, "out-of-range", "/counts/handlings" },
        { "/counts/strips", "-1", 422, "out-of-range", "/counts/strips" },
        { "/learning/rate", "0.5", 422, "out-of-range", "/learning/rate" },
        { "/learning/rate", "1.01", 422, "out-of-range", "/learning/rate" },
        { "/spread/panel/low", "1.1", 422, "out-of-range", "/spread/panel/low" },
        { "/spread/material", """{"high":0.9}""", 422, "out-of-range", "/spread/material/high" },
        { "/otherMethod/fixedCost", "-1", 422, "out-of-range", "/otherMethod/fixedCost" },
        { "/currency", "\"euro\"", 422, "unknown-value", "/currency" },
        { "/currency", "\"€€€\"", 422, "unknown-value", "/currency" },
        { "/rates/labour", null, 422, "missing-property", "/rates/labour" },
        { "/rates/formSheet", "{}", 422, "missing-property", "/rates/formSheet" },
        { "/rates", null, 422, "missing-property", "/rates/panelSheet" },
        { "/panel/curve/radius", "1", 422, "form.fold-radius-too-large", "/form/foldRadius" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public async Task Bad_values_are_named(string place, string? json, int status, string code, string faultAt)
    {
        using var response = await service.Post("/v1/estimates", Requests.Example("estimateJob", Batch).With(place, json).ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(status == (int)response.StatusCode, text);
        var fault = JsonNode.Parse(text)!["errors"]!.AsArray().FirstOrDefault(error => (string?)error!["pointer"] == faultAt);
        Assert.True(fault is not null, text);
        Assert.Equal(code, (string?)fault["code"]);
    }

    [Theory]
    [MemberData(nameof(Requests.EstimateExamples), MemberType = typeof(Requests))]
    public async Task The_shown_request_gives_the_same_answer(string operation, string name)
    {
        var first = await Ask(Requests.Example(operation, name));
        Assert.Equal(first.ToJsonString(), (await Ask(first["request"]!)).ToJsonString());
    }

    [Fact]
    public async Task The_callers_rates_win_and_leave_the_list_of_assumptions()
    {
        var plain = await Ask(Requests.Arc());
        Assert.Contains("rates.form.folding.each", Assumed(plain));
        Assert.Contains("rates.labour", Assumed(plain));
        var own = await Ask(Requests.Arc().With("/rates", """{"labour":71,"form":{"folding":{"each":2.25}}}""").With("/counts", """{"handlings":4}"""));
        var folds = (double)Element(own["form"]!, "folding")["quantity"]!;
        Assert.Equal(2.25 * folds, Likely(Element(own["form"]!, "folding")["minutes"]!), 9);
        Assert.Equal(8, Likely(Element(own["form"]!, "handling")["minutes"]!), 9);
        Assert.Equal(71.0 / 60 * Likely(own["form"]!["minutes"]!), Likely(own["prices"]![0]!["cost"]!["formLabour"]!), 6);
        Assert.DoesNotContain(Assumed(own), id => id is "rates.form.folding.each" or "rates.labour" or "counts.handlings");
        Assert.Contains("rates.form.folding.fixed", Assumed(own));
        Assert.Equal(2.25, (double)own["request"]!["rates"]!["form"]!["folding"]!["each"]!);
        Assert.Equal(0, (double)own["request"]!["rates"]!["form"]!["folding"]!["fixed"]!);
    }

    [Fact]
    public async Task Every_assumption_says_the_value_that_the_shown_request_has()
    {
        foreach (var body in new[] { Requests.Arc(), Requests.Example("estimateJob", "bench-hood-defaults") })
        {
            var answer = await Ask(body);
            Assert.NotEmpty(answer["assumptions"]!.AsArray());
            foreach (var assumption in answer["assumptions"]!.AsArray())
            {
                var id = (string)assumption!["id"]!;
                var shown = id.Split('.').Aggregate(answer["request"], (node, step) => node![step]);
                if (shown is null)
                    Assert.True(id.StartsWith("counts.", StringComparison.Ordinal) || id.EndsWith(".scrapShare", StringComparison.Ordinal), id);
                else if (id == "pieces")
                    Assert.Equal("[1]", shown.ToJsonString());
                else
                    Assert.Equal((double)shown, (double)assumption["value"]!, 9);
                Assert.Contains((string?)assumption["status"], Supports);
                Assert.NotEmpty((string)assumption["text"]!);
            }
        }
    }

    // Panel material, thickness, width and curve alone: a quote needs no more, and says what was chosen for it.
    [Fact]
    public async Task A_quote_needs_the_panel_alone_and_says_what_was_chosen()
    {
        var answer = await Ask(JsonNode.Parse("""
            {"units":"mm","panel":{"material":{"id":"ss-304"},"thickness":1.2,"width":600,"curve":{"type":"arc","radius":90,"sweep":90}},"pieces":[1,10]}
            """)!);
        Assert.Equal(2, answer["prices"]!.AsArray().Count);
        var chosen = answer["basis"]!.AsArray().Where(basis => ((string)basis!["method"]!).StartsWith("left open", StringComparison.Ordinal)).Select(basis => (string)basis!["quantity"]!);
        Assert.Superset(new HashSet<string> { "form.material", "form.thickness", "panel.leadIn", "brake.length" }, chosen.ToHashSet());
        Assert.Equal(answer.ToJsonString(), (await Ask(answer["request"]!)).ToJsonString());
    }

    [Fact]
    public async Task Rates_by_length_and_mass_are_told_in_the_callers_units()
    {
        var mm = (await Ask(Requests.Arc()))["assumptions"]!.AsArray();
        var inch = (await Ask(Requests.Example("estimateJob", "bench-hood-defaults")))["assumptions"]!.AsArray();
        AssertRow(mm, "rates.form.cutting.each", 2, "min/m");
        AssertRow(inch, "rates.form.cutting.each", 2 * 0.3048, "min/ft");
        AssertRow(mm, "rates.panelSheet.perMass", 5, "money/kg");
        AssertRow(inch, "rates.panelSheet.perMass", 5 * 0.45359237, "money/lb");
        AssertRow(mm, "rates.labour", 60, "money/h");

        static void AssertRow(JsonArray rows, string id, double value, string unit)
        {
            var row = rows.Single(row => (string?)row!["id"] == id)!;
            Assert.Equal(value, (double)row["value"]!, 8);
            Assert.Equal(unit, (string?)row["unit"]);
        }
    }

    [Fact]
    public async Task Inches_and_millimetres_agree()
    {
        // Stock sheets differ, and with them what they leave over.
        var given = Requests.Arc().With("/rates", """{"formSheet":{"scrapShare":0.1},"panelSheet":{"scrapShare":0.1}}""");
        var mm = await Ask(given);
        var inch = given.With("/units", "\"in\"");
        foreach (var length in new[] { "/panel/thickness", "/panel/width", "/panel/leadIn", "/panel/leadOut", "/panel/curve/radius", "/form/thickness", "/form/foldRadius", "/form/leadIn", "/form/leadOut", "/brake/length" })
        {
            var value = length.Split('/')[1..].Aggregate((JsonNode)inch, (node, step) => node[step]!).GetValue<double>();
            inch = inch.With(length, (value / 25.4).ToString("R", CultureInfo.InvariantCulture));
        }

        var answer = await Ask(inch);
        var (one, other) = (mm["prices"]![0]!, answer["prices"]![0]!);
        foreach (var field in CostParts.Append("total"))
            Close(Likely(one["cost"]![field]!), Likely(other["cost"]![field]!));
        Close(Likely(one["minutes"]!), Likely(other["minutes"]!));
        Close((double)one["materials"]![1]!["mass"]!, (double)other["materials"]![1]!["mass"]! * 0.45359237);
        Close((double)mm["comparisons"]![0]!["hits"]!["pitch"]!, (double)answer["comparisons"]![0]!["hits"]!["pitch"]! * 25.4);
        Close((double)Element(mm["form"]!, "cutting")["quantity"]!, (double)Element(answer["form"]!, "cutting")["quantity"]! * 0.3048);
        Assert.Equal("ft", (string?)Element(answer["form"]!, "cutting")["unit"]);
        Assert.Equal(Assumed(mm), Assumed(answer));
    }

    [Fact]
    public async Task Totals_are_the_sums_of_what_is_listed()
    {
        var answer = await Ask(Requests.Example("estimateJob", Batch));
        foreach (var bound in new[] { "low", "likely", "high" })
        {
            Close(answer["form"]!["elements"]!.AsArray().Sum(element => (double)element!["minutes"]![bound]!), (double)answer["form"]!["minutes"]![bound]!);
            Close(answer["panel"]!["elements"]!.AsArray().Sum(element => (double)element!["minutes"]![bound]!), (double)answer["panel"]!["minutes"]![bound]!);
            foreach (var row in answer["prices"]!.AsArray())
            {
                var cost = row!["cost"]!;
                Close(CostParts.Sum(part => (double)cost[part]![bound]!), (double)cost["total"]![bound]!);
                Close(Math.Max(90, (double)cost["total"]![bound]!), (double)row["price"]![bound]!);
                Close((double)row["price"]![bound]!, (int)row["pieces"]! * (double)row["eachPrice"]![bound]!);
            }
        }
    }

    [Fact]
    public async Task Every_count_of_pieces_has_its_row_in_the_order_asked()
    {
        var request = Requests.Example("estimateJob", Batch);
        var answer = await Ask(request.With("/pieces", "[60,1,10,1]"));
        Assert.Equal([60, 1, 10, 1], answer["prices"]!.AsArray().Select(row => (int)row!["pieces"]!));
        foreach (var comparison in answer["comparisons"]!.AsArray())
            Assert.Equal([60, 1, 10, 1], comparison!["costs"]!.AsArray().Select(row => (int)row!["pieces"]!));
        var alone = await Ask(request.With("/pieces", "[10]"));
        Assert.Equal(alone["prices"]![0]!.ToJsonString(), answer["prices"]![2]!.ToJsonString());
        Assert.Equal([1], (await Ask(request.With("/pieces", null)))["prices"]!.AsArray().Select(row => (int)row!["pieces"]!));
    }

    // 118 a sheet, two trials: 12 blanks for ten panels.
    [Fact]
    public async Task Whole_sheets_are_counted_and_paid_for()
    {
        var row = (await Ask(Requests.Example("estimateJob", Batch)))["prices"]![1]!;
        var sheet = row["materials"]![1]!;
        var each = (int)sheet["blanksPerSheet"]!;
        Assert.Equal(12, (int)sheet["blanks"]!);
        Assert.Equal((12 + each - 1) / each, (int)sheet["sheets"]!);
        Close(118 * (int)sheet["sheets"]!, Likely(sheet["cost"]!));
        Assert.Null(row["materials"]![0]!["sheets"]);
        Close(0.2, (double)row["materials"]![0]!["scrapShare"]!);
    }

    [Fact]
    public async Task Bumping_is_compared_without_being_asked_and_rolling_where_it_is_given()
    {
        var plain = (await Ask(Requests.Arc()))["comparisons"]!.AsArray();
        Assert.Equal(["bumping"], plain.Select(comparison => (string)comparison!["method"]!));
        var hits = plain[0]!["hits"]!;
        Close(2 * (double)hits["pitch"]!, (double)hits["dieOpening"]!);
        Close((double)Requests.Arc()["panel"]!["curve"]!["sweep"]!, (int)hits["count"]! * (double)hits["angle"]!);
        var given = await Ask(Requests.Example("estimateJob", Batch));
        Assert.Equal(["bumping", "rolling", "other"], given["comparisons"]!.AsArray().Select(comparison => (string)comparison!["method"]!));
        var own = await Ask(Requests.Arc().With("/bumping", """{"pitch":10}"""));
        Assert.Equal("""{"angle":null,"pitch":10,"setUp":30,"hit":0.25,"correcting":5,"hour":60}""", own["request"]!["bumping"]!.ToJsonString());
        Assert.DoesNotContain(Assumed(own), id => id is "bumping.angle" or "bumping.pitch");
        Assert.Equal(own.ToJsonString(), (await Ask(own["request"]!)).ToJsonString());
    }

    [Fact]
    public async Task A_winch_that_is_given_is_rigged_and_a_crew_pulls_where_there_is_none()
    {
        var crew = (await Ask(Requests.Arc().With("/panel/width", "1190")))["panel"]!;
        Assert.True((int)crew["people"]! > 1);
        Assert.False((bool)crew["winch"]!);
        Assert.Equal((int)crew["people"]!, (int)Element(crew, "pulling")["people"]!);
        var winch = (await Ask(Requests.Arc().With("/panel/pull", """{"by":{"rated":5000}}""")))["panel"]!;
        Assert.True((bool)winch["winch"]!);
        Assert.Equal(10, Likely(Element(winch, "rigging")["minutes"]!));
    }

    // 60 an hour and 2 a kilogram are the nominal figures: with a currency they are the caller's all the same.
    [Fact]
    public async Task Prices_in_a_currency_are_never_called_nominal()
    {
        const string Nominal = """{"labour":60,"formSheet":{"perMass":2},"panelSheet":{"perMass":5}}""";
        var own = Requests.Arc().With("/rates", Nominal).With("/currency", "\"EUR\"");
        foreach (var request in new[] { own, own.With("/currency", null).With("/otherMethod", """{"fixedCost":0,"costPerPiece":90}"""), own.With("/currency", null).With("/rolling", """{"setUp":10,"perPanel":5,"hour":90}""") })
        {
            var answer = await Ask(request);
            Assert.DoesNotContain(Assumed(answer), id => id is "rates.labour" || id.EndsWith("perMass", StringComparison.Ordinal));
            Assert.DoesNotContain(answer["notes"]!.AsArray(), note => (string?)note!["id"] == "nominal-money");
            Assert.Contains("rates.form.folding.each", Assumed(answer));
        }

        var nobodys = await Ask(own.With("/currency", null));
        Assert.Contains("rates.labour", Assumed(nobodys));
        Assert.Contains(nobodys["notes"]!.AsArray(), note => (string?)note!["id"] == "nominal-money");
        Assert.Equal(nobodys.ToJsonString(), (await Ask(Requests.Arc())).ToJsonString());
    }

    // Every figure at a limit, with the largest batch and both forms of learning: an answer, in order, and no number that is none.
    [Theory]
    [InlineData("unit", 1e5, 1e9, 1000)]
    [InlineData("cumulative-average", 1e5, 1e9, 1000)]
    [InlineData("unit", 0, 0, 0)]
    [InlineData("cumulative-average", 0, 1e9, 0)]
    [InlineData("unit", 1e-9, 1e-9, 1)]
    [Trait("Category", "Long")]
    public async Task Figures_at_their_limits_are_answered(string model, double minutes, double money, int count)
    {
        var (m, c) = (minutes.ToString("R", CultureInfo.InvariantCulture), money.ToString("R", CultureInfo.InvariantCulture));
        var element = $$"""{"fixed":{{m}},"each":{{m}}}""";
        var form = string.Join(',', "layout cutting testStrips setUp handling folding checking finishing ribs".Split(' ').Select(id => $"\"{id}\":{element}"));
        var panel = string.Join(',', "setUp cutting marking layingUp clamping rigging pulling trimming checking finishing".Split(' ').Select(id => $"\"{id}\":{element}"));
        var price = $$"""{"perMass":{{c}}}""";
        var request = Requests.Arc()
            .With("/rates", $$"""{"labour":{{c}},"overhead":5,"minimumCharge":{{c}},"formSheet":{{price}},"panelSheet":{{price}},"form":{ {{form}} },"panel":{ {{panel}} } }""")
            .With("/pieces", "[1,100000]")
            .With("/counts", $$"""{"handlings":{{Math.Max(1, count)}},"stopChanges":{{count}},"strips":{{count}},"checks":{{count}},"ribs":{{count}},"trials":{{count}},"clamps":{{Math.Max(1, count)}}}""")
            .With("/bumping", $$"""{"angle":0.05,"pitch":0.1,"setUp":{{m}},"hit":{{m}},"correcting":{{m}},"hour":{{c}}}""")
            .With("/spread", """{"form":{"low":0,"high":10},"panel":{"low":1,"high":1},"material":{"low":0,"high":10}}""");
        foreach (var rate in new[] { "0.5000000000000001", "0.500001", "0.999999999", "1" })
        {
            foreach (var other in new[] { 0, money })
            {
                var each = other.ToString("R", CultureInfo.InvariantCulture);
                var answer = await Ask(request
                    .With("/learning", $$"""{"model":"{{model}}","rate":{{rate}}}""")
                    .With("/rolling", $$"""{"setUp":{{m}},"perPanel":{{m}},"hour":{{each}}}""")
                    .With("/otherMethod", $$"""{"fixedCost":{{each}},"costPerPiece":{{each}},"minutesPerPiece":{{m}}}"""));
                Assert.All(answer["prices"]!.AsArray(), row =>
                {
                    var total = row!["cost"]!["total"]!;
                    Assert.True((double)total["low"]! <= (double)total["likely"]! && (double)total["likely"]! <= (double)total["high"]!);
                    Assert.True(Likely(row["lastPanelMinutes"]!) >= 0);
                });
            }
        }
    }

    [Fact]
    public async Task Break_even_stands_where_the_total_costs_cross()
    {
        var request = Requests.Example("estimateJob", Batch).With("/rates/panelSheet/buy", "\"area-used\"").With("/otherMethod/costPerPiece", "75");
        var breakEven = Other(await Ask(request))["breakEven"]!;
        var from = (int)breakEven["likely"]!["from"]!;
        Assert.Equal("from", (string?)breakEven["likely"]!["outcome"]);
        Assert.True(from > 1);
        var costs = Other(await Ask(request.With("/pieces", $"[{from - 1},{from}]")))["costs"]!;
        Assert.True(Likely(costs[0]!["saving"]!) <= 0);
        Assert.True(Likely(costs[1]!["saving"]!) > 0);
        Assert.True((int)breakEven["low"]!["from"]! <= from);

        static JsonNode Other(JsonNode answer) => answer["comparisons"]!.AsArray().Single(comparison => (string?)comparison!["method"] == "other")!;
    }

    [Fact]
    public async Task A_taper_and_a_mirrored_panel_are_counted_for_what_they_are()
    {
        const string Taper = """{"type":"taper","near":{"type":"arc","radius":90,"sweep":60},"far":{"type":"arc","radius":120,"sweep":60},"length":600}""";
        var taper = await Ask(Requests.Arc().With("/panel/curve", Taper).With("/panel/width", null));
        Assert.Equal(2 * (double)Element(taper["form"]!, "folding")["quantity"]!, (double)Element(taper["form"]!, "layout")["quantity"]!);
        Assert.Equal(1, (int)taper["form"]!["count"]!);
        var hands = await Ask(Requests.Arc().With("/panel/curve", Taper).With("/panel/width", null).With("/panel/mirrored", "true").With("/panel/leadOut", "400"));
        Assert.Equal(2, (int)hands["form"]!["count"]!);
        Assert.Equal(2, (int)hands["prices"]![0]!["materials"]![0]!["blanks"]!);
        Assert.Contains(hands["notes"]!.AsArray(), note => (string?)note!["id"] == "opposite-hand");
        var mirrored = await Ask(Requests.Arc().With("/panel/mirrored", "true"));
        Assert.Equal(1, (int)mirrored["form"]!["count"]!);
        Assert.Equal(2, (double)Element(mirrored["panel"]!, "pulling")["quantity"]!);
        Assert.Contains(mirrored["safety"]!.AsArray(), note => (string?)note!["id"] == "second-half-swings");
    }

    [Fact]
    public async Task A_form_that_cannot_be_made_is_estimated_and_says_so()
    {
        var answer = await Ask(Requests.Arc().With("/brake/length", "400"));
        Assert.Equal("cannot-be-made", (string?)answer["verdict"]);
        Assert.Equal(["brake-length"], answer["checks"]!.AsArray().Select(check => (string)check!["id"]!));
        Assert.Contains("brake-length", (string?)answer["notes"]!.AsArray().Single(note => (string?)note!["id"] == "cannot-be-made")!["text"], StringComparison.Ordinal);
        Assert.True(Likely(answer["form"]!["minutes"]!) > 0);
        Assert.Empty((await Ask(Requests.Arc()))["checks"]!.AsArray());
    }

    [Fact]
    public async Task A_line_of_a_batch_is_answered_as_by_itself()
    {
        var request = Requests.Example("estimateJob", Batch);
        var line = new JsonObject { ["operation"] = "estimate", ["request"] = request.DeepClone() };
        using var response = await service.Post("/v1/batches", System.Text.Encoding.UTF8.GetBytes(line.ToJsonString() + "\n"), "application/x-ndjson");
        var answer = JsonNode.Parse((await response.Content.ReadAsStringAsync()).Trim())!["answer"];
        Assert.Equal((await Ask(request)).ToJsonString(), answer!.ToJsonString());
    }

    [Fact]
    public async Task The_largest_batch_is_answered_with_and_without_learning()
    {
        foreach (var rate in new[] { "1", "0.8" })
        {
            var answer = await Ask(Requests.Example("estimateJob", Batch).With("/pieces", "[100000]").With("/learning/rate", rate));
            Assert.Equal(100_000, (int)answer["prices"]![0]!["pieces"]!);
        }
    }

    private static string[] Assumed(JsonNode answer) => [.. answer["assumptions"]!.AsArray().Select(assumption => (string)assumption!["id"]!)];

    private static JsonNode Element(JsonNode work, string id) => work["elements"]!.AsArray().Single(element => (string?)element!["id"] == id)!;

    private static double Likely(JsonNode band) => (double)band["likely"]!;

    private static void Close(double one, double other) =>
        Assert.True(Math.Abs(one - other) <= 1e-6 * Math.Max(1e-3, Math.Abs(one)), $"{one} against {other}");

    private async Task<JsonNode> Ask(JsonNode request)
    {
        using var response = await service.Post("/v1/estimates", request.ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!;
    }
}
