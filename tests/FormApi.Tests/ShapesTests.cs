using System.Text.Json.Nodes;
using FormApi.Contract;
using FormApi.Http.Units;
using Forming.Checks;
using Forming.Tests;

namespace FormApi.Tests;

/// <summary>One name for a sentence, and one shape each for a check, a remedy and what a figure rests on, in every answer.</summary>
public sealed class ShapesTests(Service service) : IClassFixture<Service>
{
    private static readonly string[] Check = ["id", "verdict", "value", "limit", "bound", "unit", "text", "remedy"];
    private static readonly string[] Remedy = ["text", "changes"];
    private static readonly string[] Change = ["pointer", "value"];
    private static readonly string[] Basis = ["quantity", "method", "source", "status"];

    private static readonly string[] Statuses =
        ["published", "published-as-quoted", "computed", "common-practice", "from-memory", "model", "estimated", "assumption", "caller"];

    /// <summary>Other names that a sentence meant for a reader could go by; RFC 9457 has <c>title</c> and <c>detail</c> of its own.</summary>
    private static readonly string[] OtherNames =
        ["reason", "message", "why", "note", "explanation", "sentence", "hint", "advice", "comment", "remark", "remarks", "description", "summary"];

    /// <summary>A printed value that the engine recomputes: no check of a job, and held within a tolerance on both sides.</summary>
    private const string VerifiedValue = "VerifiedValueAnswer";

    /// <summary>Digits are left out on the way to JSON.</summary>
    private const double Equal = 1e-6;

    private JsonNode? _contract;

    // What a short answer keeps of a schema.
    private static bool IsShort(string schema) => schema.StartsWith("Minimal", StringComparison.Ordinal);

    [Fact]
    public async Task A_sentence_meant_for_a_reader_is_a_text()
    {
        var named = (await Schemas()).SelectMany(schema => schema.Fields.Select(field => (schema.Name, Field: field.Key)));
        Assert.DoesNotContain(named, field => OtherNames.Contains(field.Field));
    }

    [Fact]
    public async Task What_has_an_id_and_a_verdict_is_a_check()
    {
        var judged = (await Schemas())
            .Where(schema => schema.Fields.ContainsKey("id") && schema.Fields.ContainsKey("verdict") && !IsShort(schema.Name))
            .ToArray();
        Assert.Equal(["CheckResult", VerifiedValue], judged.Select(schema => schema.Name).Order());
        Assert.Equal(Check, judged[0].Fields.Select(field => field.Key));
        Assert.Equal(["least", "most"], Words(judged[0].Fields["bound"]!, await Contract()));
        Assert.Equal(["pass", "warn", "fail"], Words(judged[0].Fields["verdict"]!, await Contract()));
        Assert.DoesNotContain("remedy", (await Contract())["components"]!["schemas"]!["CheckResult"]!["required"]!.AsArray().Select(field => (string)field!));
        Assert.All(await ListsNamed("checks"), item => Assert.True(item is "CheckResult" or "MinimalCheckResult", item));
    }

    [Fact]
    public async Task A_remedy_is_a_text_with_changes()
    {
        var schemas = (await Schemas()).ToDictionary(schema => schema.Name, schema => schema.Fields);
        var remedies = schemas.Where(schema => schema.Value.ContainsKey("remedy")).ToArray();
        Assert.True(remedies.Length >= 2, $"{remedies.Length} remedies");
        Assert.All(remedies, schema => Assert.Equal("RemedyResult", Referred(schema.Value["remedy"]!)));
        Assert.Equal(Remedy, schemas["RemedyResult"].Select(field => field.Key));
        Assert.Equal(Change, schemas["ChangeResult"].Select(field => field.Key));

        // Nothing else goes by the name of changes.
        Assert.All(schemas.Where(schema => schema.Value.ContainsKey("changes")), schema => Assert.Equal("RemedyResult", schema.Key));
        Assert.All(await ListsNamed("changes"), item => Assert.Equal("ChangeResult", item));
    }

    [Fact]
    public async Task What_a_figure_rests_on_is_told_alike_everywhere()
    {
        var contract = await Contract();
        var basis = (await Schemas()).Single(schema => schema.Name == "BasisResult").Fields;
        Assert.Equal(Basis, basis.Select(field => field.Key));
        Assert.Equal(Statuses, Words(basis["status"]!, contract));
        var lists = await ListsNamed("basis");
        Assert.True(lists.Length >= 10, $"{lists.Length} lists");
        Assert.All(lists, item => Assert.Equal("BasisResult", item));
    }

    [Fact]
    public async Task A_fault_of_a_request_is_a_pointer_a_code_and_a_text()
    {
        var fault = (await Schemas()).Single(schema => schema.Name == "Fault").Fields;
        Assert.Equal(["pointer", "code", "text", "given", "allowed", "remedy"], fault.Select(field => field.Key));
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_check_has_one_quantity_in_every_answer_and_its_verdict_is_the_figure_against_its_limit()
    {
        var kinds = typeof(CheckIds).GetProperties().Select(property => (CheckId)property.GetValue(null)!).ToDictionary(id => id.Name);
        var seen = new HashSet<string>();
        foreach (var (operation, name, body) in Bodies())
        {
            using var response = await service.Post(Requests.PathOf(operation), body.ToJsonString());
            var answer = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
            var units = (string?)body["units"] == "in" ? UnitSystem.Inch : UnitSystem.Mm;
            foreach (var check in ItemsOf(answer, "checks"))
            {
                var id = (string)check["id"]!;
                var because = $"{operation} {name}: {check.ToJsonString()}";
                Assert.True(kinds.TryGetValue(id, out var kind) && (string?)check["unit"] == units.NameOf(kind.Quantity), because);
                Assert.All(check.AsObject(), field => Assert.Contains(field.Key, Check));
                Assert.Null(CheckLimits.Contradiction(
                    id, (string)check["verdict"]!, (double?)check["value"], (double?)check["limit"], (string)check["bound"]!, Equal));
                Assert.True(check["remedy"] is null || ((string)check["verdict"]! != "pass" && ((string)check["remedy"]!["text"]!).Length > 0), because);
                seen.Add(id);
            }

            Assert.All(ItemsOf(answer, "basis"), item => Assert.Equal(Basis, item.AsObject().Select(field => field.Key)));
        }

        Assert.True(seen.Count > 40, $"{seen.Count} checks: {string.Join(", ", seen.Order())}");
    }

    private static IEnumerable<(string Operation, string Name, JsonObject Body)> Bodies() =>
        Directory.GetFiles(Repository.PathOf("openapi", "examples"), "*.request.json").Order(StringComparer.Ordinal)
            .Select(path => Path.GetFileName(path).Split('.'))
            .Where(parts => parts[0] != "drawForm")
            .Select(parts => (parts[0], parts[1], Requests.Example(parts[0], parts[1])));

    private static IEnumerable<JsonNode> ItemsOf(JsonNode node, string list) => node switch
    {
        JsonObject fields => fields.Where(field => field is { Key: not "request", Value: not null }).SelectMany(field =>
            field.Key == list && field.Value is JsonArray items ? items.Select(item => item!) : ItemsOf(field.Value!, list)),
        JsonArray items => items.OfType<JsonNode>().SelectMany(item => ItemsOf(item, list)),
        _ => [],
    };

    private static string[] Words(JsonNode field, JsonNode contract) =>
        [.. contract["components"]!["schemas"]![Referred(field)]!["enum"]!.AsArray().Select(word => (string)word!)];

    private static string Referred(JsonNode field) =>
        ((string?)field["$ref"] ?? (string)field["oneOf"]!.AsArray().Single(part => part!["$ref"] is not null)!["$ref"]!).Split('/')[^1];

    /// <summary>What the items are of every list of that name.</summary>
    private async Task<string[]> ListsNamed(string name) =>
    [
        .. (await Schemas()).Select(schema => schema.Fields[name]).OfType<JsonNode>().Where(field => field["items"] is not null)
            .Select(field => Referred(field["items"]!)),
    ];

    /// <summary>Every schema with all of its fields, those of its parts as well.</summary>
    private async Task<IReadOnlyList<(string Name, JsonObject Fields)>> Schemas() =>
    [
        .. (await Contract())["components"]!["schemas"]!.AsObject().Select(schema => (schema.Key, new JsonObject(
            (schema.Value!["allOf"]?.AsArray().Select(part => part!["properties"]) ?? []).Append(schema.Value["properties"])
                .OfType<JsonObject>().SelectMany(fields => fields).DistinctBy(field => field.Key)
                .Select(field => KeyValuePair.Create(field.Key, field.Value?.DeepClone()))))),
    ];

    /// <summary>The contract as the code has it.</summary>
    private async Task<JsonNode> Contract() => _contract ??= JsonNode.Parse((await ContractFile.Make(service.Services)).Json)!;
}
