using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace FormApi.Tests;

/// <summary>The contract is what is committed, and what is committed is true.</summary>
public sealed class ContractTests(Service service) : IClassFixture<Service>
{
    private static readonly string[] Statuses = ["400", "406", "408", "413", "415", "422", "429", "503"];

    // What is refused, late or slow in a batch is a line of it.
    private static readonly string[] StreamStatuses = [.. Statuses.Except(["408", "422", "503"])];

    [Theory]
    [InlineData("json")]
    [InlineData("yaml")]
    public async Task The_committed_contract_is_what_the_code_says(string format)
    {
        var served = await service.Client.GetByteArrayAsync("/openapi/v1." + format);
        Repository.Compare(Repository.PathOf("openapi", "form-api.v1." + format), served);
    }

    [Fact]
    public async Task It_is_openapi_3_1_and_every_operation_is_described()
    {
        var contract = await Contract();
        Assert.StartsWith("3.1.", (string)contract["openapi"]!, StringComparison.Ordinal);
        var names = new HashSet<string>();
        foreach (var (path, methods) in contract["paths"]!.AsObject())
        {
            foreach (var (method, operation) in methods!.AsObject())
            {
                Assert.True(names.Add((string)operation!["operationId"]!), path);
                Assert.False(string.IsNullOrEmpty((string?)operation["summary"]), path);
                Assert.NotEmpty(operation["tags"]!.AsArray());
                Assert.True(HasExample(operation), path);
                foreach (var parameter in operation["parameters"]?.AsArray() ?? [])
                    Assert.False(string.IsNullOrEmpty((string?)parameter!["description"]), path);
                if (method == "post")
                    Assert.All(path == "/v1/batches" ? StreamStatuses : Statuses, status => Assert.NotNull(operation["responses"]![status]));
            }
        }
    }

    private static bool HasExample(JsonNode operation) => Media(operation["responses"]!["200"]!).Concat(Media(operation["requestBody"])).Any(media => media["examples"] is not null)
        || (operation["parameters"]?.AsArray().Any(parameter => parameter!["example"] is not null) ?? false);

    private static IEnumerable<JsonNode> Media(JsonNode? part) => part?["content"]?.AsObject().Select(media => media.Value!) ?? [];

    [Fact]
    public async Task Every_field_of_every_schema_is_described()
    {
        foreach (var (name, schema) in (await Contract())["components"]!["schemas"]!.AsObject())
        {
            Assert.False(string.IsNullOrEmpty((string?)schema!["description"]), name);
            foreach (var (field, value) in schema["properties"]?.AsObject() ?? [])
                Assert.False(string.IsNullOrEmpty((string?)value!["description"]), name + "." + field);
        }
    }

    [Fact]
    public async Task Numbers_of_a_request_show_their_ranges()
    {
        var schemas = (await Contract())["components"]!["schemas"]!.AsObject();
        foreach (var (name, schema) in schemas.Where(entry => entry.Key.EndsWith("Input", StringComparison.Ordinal)))
        {
            var fields = schema!["properties"] ?? schema["allOf"]?[1]?["properties"];
            foreach (var (field, value) in fields!.AsObject())
            {
                var type = value!["type"]?.ToJsonString() ?? "";
                if (type.Contains("number", StringComparison.Ordinal))
                    Assert.True(value["maximum"] is not null && (value["minimum"] ?? value["exclusiveMinimum"]) is not null, name + "." + field);
            }
        }
    }

    [Fact]
    public async Task Example_bodies_of_every_kind_of_curve_validate()
    {
        var contract = await Contract();
        var kinds = new HashSet<string>();
        foreach (var (name, body) in Requests.Examples())
        {
            AssertValid(contract, "FormRequest", body, name);
            foreach (var curve in Curves(body["panel"]!["curve"]!))
            {
                var kind = (string)curve["type"]!;
                kinds.Add(kind);
                AssertValid(contract, "CurveInput", curve, name);
                AssertValid(contract, char.ToUpperInvariant(kind[0]) + kind[1..] + "Input", curve, name);
            }
        }

        Assert.Equal(["arc", "ellipse", "flat", "points", "progressive", "segments", "taper"], kinds.Order());
    }

    [Fact]
    public async Task Answers_validate()
    {
        var contract = await Contract();
        foreach (var (name, body) in Requests.Examples())
            AssertValid(contract, "FormAnswer", await service.Form(body), name);
        foreach (var (name, body) in Requests.Predictions())
        {
            AssertValid(contract, "PredictionRequest", body, name);
            AssertValid(contract, "PredictionAnswer", await service.Prediction(body), name);
        }

        foreach (var (name, body) in Requests.Programs())
        {
            AssertValid(contract, "ProgramRequest", body, name);
            AssertValid(contract, "ProgramAnswer", await service.Program(body), name);
        }
    }

    [Fact]
    public async Task Strips_and_what_they_teach_validate()
    {
        var contract = await Contract();
        foreach (var example in Requests.StripExamples())
        {
            var (operation, name) = ((string)example[0], (string)example[1]);
            var schema = operation["learn".Length..] + "Strips";
            var body = Requests.Example(operation, name);
            using var response = await service.Post(Requests.PathOf(operation), body.ToJsonString());
            var answer = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
            AssertValid(contract, schema + "Request", body, name);
            AssertValid(contract, schema + "Request", answer["request"]!, name);
            AssertValid(contract, schema + "Answer", answer, name);
        }
    }

    [Theory]
    [InlineData("computeTolerances", "Tolerance")]
    [InlineData("inspectForm", "Inspection")]
    [InlineData("estimateJob", "Estimate")]
    public async Task Accuracy_and_estimates_validate(string operation, string schema)
    {
        var contract = await Contract();
        foreach (var example in Requests.AccuracyExamples().Concat(Requests.EstimateExamples()).Where(example => (string)example[0] == operation))
        {
            var body = Requests.Example(operation, (string)example[1]);
            using var response = await service.Post(Requests.PathOf(operation), body.ToJsonString());
            var answer = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
            AssertValid(contract, schema + "Request", body, operation);
            AssertValid(contract, schema + "Request", answer["request"]!, operation);
            AssertValid(contract, schema + "Answer", answer, operation);
        }
    }

    [Fact]
    public async Task A_field_too_many_and_a_wrong_kind_do_not_validate()
    {
        var contract = await Contract();
        var arc = Requests.Arc();
        Assert.False(IsValid(contract, "FormRequest", arc.With("/foretell", "true")));
        Assert.False(IsValid(contract, "ArcInput", JsonNode.Parse("""{"type":"arc","radius":1,"sweep":2,"law":"clothoid"}""")!));
        Assert.False(IsValid(contract, "ArcInput", JsonNode.Parse("""{"type":"flat","radius":1,"sweep":2}""")!));
        Assert.False(IsValid(contract, "CurveInput", JsonNode.Parse("""{"radius":1,"sweep":2}""")!));
    }

    [Fact]
    public async Task The_pages_to_read_it_are_there()
    {
        var page = await service.Client.GetStringAsync("/docs/index.html");
        Assert.Contains("FormApi", page, StringComparison.Ordinal);
    }

    private static IEnumerable<JsonNode> Curves(JsonNode curve) =>
        [curve, .. (curve["segments"]?.AsArray() ?? []).Select(piece => piece!), .. new[] { curve["near"], curve["far"] }.OfType<JsonNode>()];

    private static void AssertValid(JsonNode contract, string schema, JsonNode body, string because)
    {
        var results = Evaluate(contract, schema, body);
        Assert.True(results.IsValid, because + ": " + JsonSerializer.Serialize(results));
    }

    private static bool IsValid(JsonNode contract, string schema, JsonNode body) => Evaluate(contract, schema, body).IsValid;

    private static EvaluationResults Evaluate(JsonNode contract, string schema, JsonNode body)
    {
        var whole = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$ref"] = "#/components/schemas/" + schema,
            ["components"] = new JsonObject { ["schemas"] = contract["components"]!["schemas"]!.DeepClone() },
        };
        // The validator knows JSON Schema; the discriminator is OpenAPI's.
        whole["components"]!["schemas"]!["CurveInput"]!.AsObject().Remove("discriminator");
        var options = new BuildOptions { SchemaRegistry = new SchemaRegistry() };
        return JsonSchema.FromText(whole.ToJsonString(), options).Evaluate(
            JsonSerializer.SerializeToElement(body), new EvaluationOptions { OutputFormat = OutputFormat.List });
    }

    private async Task<JsonNode> Contract() => JsonNode.Parse(await service.Client.GetStringAsync("/openapi/v1.json"))!;
}
