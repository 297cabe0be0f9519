using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Many variants of one request: every row is the plan of its combination, a bad one spoils itself only, the best are not beaten.</summary>
public sealed class ComparisonsTests(Service service) : IClassFixture<Service>
{
    private static JsonObject Quick() => Requests.Arc().With("/panel/springback", """{"model":"pure-bending"}""");

    private static JsonObject Asking(JsonObject request, string vary, string? operation = null)
    {
        var asking = new JsonObject { ["request"] = request.DeepClone(), ["vary"] = JsonNode.Parse(vary) };
        if (operation is not null)
            asking["operation"] = operation;
        return asking;
    }

    private async Task<JsonNode> Compare(JsonObject asking)
    {
        using var response = await service.Post("/v1/comparisons", asking.ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(response.StatusCode == HttpStatusCode.OK, text);
        return JsonNode.Parse(text)!;
    }

    // What is kept as it was sent, and written in place of values, is never read as text before.
    [Fact]
    public async Task A_request_to_be_varied_has_to_be_text_in_UTF_8()
    {
        var body = Encoding.UTF8.GetBytes(Asking(Quick(), """[{"pointer":"/form/stepping/folds","values":[8,12]}]""").ToJsonString());
        body[body.AsSpan().IndexOf("mm"u8)] = 0xA4;
        using var response = await service.Post("/v1/comparisons", body);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Equal("The body is not UTF-8.", (string)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["detail"]!);
    }

    [Fact]
    public async Task Every_row_is_the_plan_of_its_combination()
    {
        var answer = await Compare(Asking(
            Requests.Arc(), """[{"pointer":"/form/stepping/folds","values":[8,12]},{"pointer":"/panel/curve/radius","values":[120,150]}]"""));
        var rows = answer["rows"]!.AsArray();
        Assert.Equal(4, rows.Count);
        Assert.Equal(["[8,120]", "[8,150]", "[12,120]", "[12,150]"], rows.Select(row => row!["values"]!.ToJsonString()));
        foreach (var row in rows)
        {
            var form = await service.Form(Requests.Arc()
                .With("/form/stepping/folds", row!["values"]![0]!.ToJsonString()).With("/panel/curve/radius", row["values"]![1]!.ToJsonString()));
            Assert.Equal((string)form["verdict"]!, (string)row["verdict"]!);
            Assert.Equal(
                form["checks"]!.AsArray().Where(check => (string)check!["verdict"]! != "pass").Select(check => (string)check!["id"]!),
                row["notPassed"]!.AsArray().Select(id => (string)id!));
            Assert.Equal((int)form["form"]!["folds"]!, (int)row["folds"]!);
            Assert.Equal(form["form"]!["stopSettings"]!.AsArray().Count, (int)row["stopSettings"]!);
            Assert.Equal((double)form["panel"]!["outcome"]!["sweep"]!, (double)row["sweep"]!);
            Assert.True(JsonNode.DeepEquals(form["panel"]!["outlook"]!["radius"], row["radius"]));
            Assert.Equal((double)form["panel"]!["outcome"]!["ripple"]!["height"]!, (double)row["ripple"]!);
            Assert.Equal((double)form["panel"]!["pull"]!["force"]!, (double)row["pull"]!);
            Assert.Equal((double)form["panel"]!["blank"]!["length"]!, (double)row["panelBlank"]![0]!);
            Assert.Equal((double)form["form"]!["blank"]!["width"]!, (double)row["formBlank"]![1]!);
        }
    }

    [Fact]
    public async Task Minutes_and_cost_are_those_of_an_estimate()
    {
        var request = Requests.Example("estimateJob", "cab-corner-batch");
        var answer = await Compare(Asking(request, """[{"pointer":"/form/stepping/folds","values":[10]}]""", "estimate"));
        request["form"]!["stepping"] = JsonNode.Parse("""{"folds":10}""");
        using var posted = await service.Post("/v1/estimates", request.ToJsonString());
        var estimate = JsonNode.Parse(await posted.Content.ReadAsStringAsync())!;
        var row = answer["rows"]![0]!;
        Assert.Equal((double)estimate["form"]!["minutes"]!["likely"]!, (double)row["buildMinutes"]!);
        Assert.Equal((double)estimate["prices"]![0]!["price"]!["likely"]!, (double)row["cost"]!);
    }

    [Fact]
    public async Task A_bad_combination_spoils_its_own_row_only()
    {
        var answer = await Compare(Asking(Quick(), """[{"pointer":"/panel/thickness","values":[1.2,-1,"thick",null,1.5]}]"""));
        var rows = answer["rows"]!.AsArray();
        Assert.Equal([null, 422, 400, 422, null], rows.Select(row => (int?)row!["problem"]?["status"]));
        Assert.Equal("/panel/thickness", (string)rows[1]!["problem"]!["errors"]![0]!["pointer"]!);
        Assert.All(rows.Where(row => row!["problem"] is null), row => Assert.True((int)row!["folds"]! > 1));
        Assert.All(rows.Where(row => row!["problem"] is not null), row => Assert.Null(row!["folds"]));
    }

    [Fact]
    public async Task The_best_rows_are_those_that_no_other_beats()
    {
        var answer = await Compare(Asking(
            Quick(), """[{"pointer":"/form/stepping/folds","values":[5,7,9,12,16]},{"pointer":"/panel/lever","values":[null,60,120]}]"""));
        var rows = answer["rows"]!.AsArray().Where(row => (string)row!["verdict"]! != "cannot-be-made" && row["ripple"] is not null).ToArray();
        double[] Figures(JsonNode? row) => [(int)row!["folds"]!, (double)row["ripple"]!, (double)row["buildMinutes"]!];
        var best = rows.Where(row => !rows.Any(other =>
        {
            var (a, b) = (Figures(other), Figures(row));
            return a[0] <= b[0] && a[1] <= b[1] && a[2] <= b[2] && (a[0] < b[0] || a[1] < b[1] || a[2] < b[2]);
        }));
        Assert.Equal(best.Select(row => (int)row!["row"]!), answer["best"]!.AsArray().Select(row => (int)row!));
        Assert.NotEmpty(answer["best"]!.AsArray());
    }

    public static TheoryData<string, string, string> BadQuestions() => new()
    {
        { """[]""", "out-of-range", "/vary" },
        { """[{"pointer":"/panel/thickness","values":[]}]""", "out-of-range", "/vary/0/values" },
        { """[{"pointer":"panel","values":[1]}]""", "unknown-value", "/vary/0/pointer" },
        { """[{"pointer":"/units/of/what","values":[1]}]""", "unknown-value", "/vary/0/pointer" },
        { """[{"pointer":"/panel/stockSheets/3/length","values":[1]}]""", "", "" },
        { """[{"pointer":"/panel/width","values":[1]},{"pointer":"/panel/width","values":[2]}]""", "contradicts", "/vary/1/pointer" },
    };

    [Theory]
    [MemberData(nameof(BadQuestions))]
    public async Task A_question_that_cannot_be_asked_is_refused(string vary, string code, string place)
    {
        using var response = await service.Post("/v1/comparisons", Asking(Quick(), vary).ToJsonString());
        if (code.Length == 0)
        {
            // The list is not there, so an object is made, which the request then refuses in its row.
            Assert.Equal(HttpStatusCode.OK, response.StatusCode);
            return;
        }

        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        var fault = JsonNode.Parse(await response.Content.ReadAsStringAsync())!["errors"]![0]!;
        Assert.Equal((code, place), ((string)fault["code"]!, (string)fault["pointer"]!));
    }

    [Fact]
    public async Task More_than_500_combinations_are_refused_and_500_are_answered_as_a_table()
    {
        var many = string.Join(',', Enumerable.Range(0, 25).Select(i => (400 + i).ToString(CultureInfo.InvariantCulture)));
        var vary = $$"""[{"pointer":"/panel/width","values":[{{many}}]},{"pointer":"/panel/curve/sweep","values":[{{string.Join(',', Enumerable.Range(60, 20))}}]}]""";
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/comparisons")
        {
            Content = new StringContent(Asking(Quick(), vary).ToJsonString(), Encoding.UTF8, "application/json"),
        };
        request.Headers.Accept.ParseAdd("text/csv");
        using var table = await service.Client.SendAsync(request);
        Assert.Equal("text/csv", table.Content.Headers.ContentType!.MediaType);
        var lines = (await table.Content.ReadAsStringAsync()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(501, lines.Length);
        Assert.StartsWith("row,/panel/width,/panel/curve/sweep,best,verdict,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("500,424,79,", lines[500], StringComparison.Ordinal);
        var cells = CellsOf(lines[0]);
        Assert.All(lines, line => Assert.Equal(cells, CellsOf(line)));
        using var response = await service.Post("/v1/comparisons", Asking(Quick(), vary.Replace("[400,", "[399,400,", StringComparison.Ordinal)).ToJsonString());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.Contains("520 combinations", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    // Commas inside quotes part nothing.
    private static int CellsOf(string line) => 1 + line.Split('"').Where((_, i) => i % 2 == 0).Sum(outside => outside.Count(sign => sign == ','));
}
