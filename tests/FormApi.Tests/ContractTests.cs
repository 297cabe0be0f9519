using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FormApi.Contract;
using FormApi.Http.Problems;
using Json.Schema;

namespace FormApi.Tests;

/// <summary>The contract is what is committed, and what is committed is true.</summary>
public sealed class ContractTests(Service service) : IClassFixture<Service>
{
    // As it is served but for the spaces; a writer's usual escapes are not in it.
    private static readonly JsonSerializerOptions AsSent = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly string[] Statuses = ["400", "406", "408", "413", "415", "422", "429", "503"];

    // What is refused, late or slow in a batch is a line of it.
    private static readonly string[] StreamStatuses = [.. Statuses.Except(["408", "422", "503"])];

    [Fact]
    public async Task The_committed_contract_is_what_the_code_says()
    {
        var (json, yaml) = await ContractFile.Make(service.Services);
        Repository.Compare(Repository.PathOf("openapi", "form-api.v1.json"), json);
        Repository.Compare(Repository.PathOf("openapi", "form-api.v1.yaml"), yaml);
    }

    [Theory]
    [InlineData("json")]
    [InlineData("yaml")]
    public async Task What_is_served_is_the_committed_contract(string format)
    {
        var served = await service.Client.GetByteArrayAsync("/openapi/v1." + format);
        Assert.Equal(await File.ReadAllBytesAsync(Repository.PathOf("openapi", "form-api.v1." + format)), served);
    }

    [Fact]
    public async Task It_is_light_and_shows_at_most_one_answer_a_media_type()
    {
        var contract = await Contract();
        Assert.InRange(Encoding.UTF8.GetByteCount(contract.ToJsonString(AsSent)), 1, 300_000);
        foreach (var (path, operation) in Operations(contract))
            Assert.All(Media(operation["responses"]!["200"]!), media => Assert.True((media["examples"]?.AsObject().Count ?? 0) <= 1, path));
    }

    [Fact]
    public async Task Operations_stand_in_the_order_of_a_job()
    {
        var contract = await Contract();
        var tags = contract["tags"]!.AsArray().Select(tag => (string)tag!["name"]!).ToList();
        Assert.Equal("Forms", tags[0]);
        Assert.Equal("Operations", tags[^1]);
        var places = Operations(contract).Select(entry => tags.IndexOf((string)entry.Operation["tags"]![0]!)).ToArray();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
        Assert.Equal(tags.Count, places.Distinct().Count());
    }

    [Fact]
    public async Task Every_example_validates()
    {
        var contract = await Contract();
        var seen = 0;
        foreach (var (path, operation) in Operations(contract))
        {
            var responses = operation["responses"]!.AsObject().Select(response => Resolve(contract, response.Value!));
            foreach (var media in responses.Append(operation["requestBody"]).SelectMany(Media).Where(media => media["examples"] is not null))
            {
                var schema = ((string)media["schema"]!["$ref"]!).Split('/')[^1];
                foreach (var (name, example) in media["examples"]!.AsObject())
                {
                    AssertValid(contract, schema, Resolve(contract, example!)["value"]!, $"{path} {name}");
                    seen++;
                }
            }
        }

        Assert.True(seen > 150, $"{seen} examples");
    }

    [Fact]
    public async Task Every_kind_of_problem_is_documented_with_an_example_and_a_code()
    {
        var contract = await Contract();
        var codes = contract["components"]!["schemas"]!["Problem"]!["properties"]!["code"]!["enum"]!.AsArray().Select(code => (string)code!).ToHashSet();
        Assert.Equal(ProblemKinds.All.Select(kind => kind.Code).Order(), codes.Order());
        var shown = new HashSet<string>();
        foreach (var (path, operation) in Operations(contract))
        {
            foreach (var (status, response) in operation["responses"]!.AsObject().Where(entry => entry.Key[0] is '4' or '5'))
            {
                var whole = Resolve(contract, response!);
                if (whole["content"]?["application/problem+json"] is not { } media)
                    continue;
                Assert.NotEmpty(media["examples"]!.AsObject());
                foreach (var (code, example) in media["examples"]!.AsObject())
                {
                    var value = Resolve(contract, example!)["value"]!;
                    Assert.Equal((code, status), ((string)value["code"]!, value["status"]!.ToJsonString()));
                    shown.Add(code);
                }

                Assert.Equal(status is "429" or "503", whole["headers"]?["Retry-After"] is not null);
            }
        }

        // A method that a path does not answer is no answer of an operation, nor is a bug.
        Assert.Equal(codes.Except(["method-not-allowed", "internal-error"]).Order(), shown.Order());
    }

    [Theory]
    [InlineData("empty-body", "")]
    [InlineData("malformed-json", """{"units":""")]
    [InlineData("unknown-field", """{"units":"mm","panel":{"material":{"id":"ss-304"},"leadIn":1,"leadOut":1,"curve":{"type":"arc","radios":90}}}""")]
    [InlineData("duplicated-field", """{"units":"mm","units":"mm"}""")]
    [InlineData("wrong-type", """{"units":3}""")]
    [InlineData("null-not-allowed", """{"units":null}""")]
    [InlineData("unknown-value", """{"units":"cm"}""")]
    public async Task Examples_of_problems_say_what_the_service_says(string code, string body)
    {
        using var response = await service.Post("/v1/forms", body);
        AssertSaysSame(code, await response.Content.ReadAsStringAsync());
    }

    [Theory]
    [InlineData("not-found", "/v1/materials/ss-3o4")]
    [InlineData("bad-request", "/v1/materials?units=cm")]
    [InlineData("broken-link", "/v1/links/abc/form")]
    public async Task Examples_of_problems_with_a_path_say_what_the_service_says(string code, string path)
    {
        using var response = await service.Client.GetAsync(path);
        AssertSaysSame(code, await response.Content.ReadAsStringAsync(), "errors");
    }

    [Fact]
    public async Task Named_answers_are_the_ones_that_the_contract_names()
    {
        var contract = await Contract();
        foreach (var (path, operation) in Operations(contract).Where(entry => !entry.Path.Contains('{')))
        {
            using var response = operation["requestBody"] is null
                ? await service.Client.GetAsync(path)
                : await service.Post(path, Media(operation["requestBody"]).First()["examples"]!.AsObject().First().Value!["value"]!.ToJsonString());
            if (path != "/v1/batches")
                Assert.True(response.IsSuccessStatusCode, path + await response.Content.ReadAsStringAsync());
            Assert.Equal(response.Headers.ETag is not null, operation["responses"]!["200"]!["headers"]?["ETag"] is not null);
        }
    }

    // How long an answer may be kept, what it depends on and how it travels is HTTP's own business; so is what a browser may do with it.
    [Fact]
    public async Task Headers_that_an_answer_has_are_in_the_contract()
    {
        string[] unsaid = ["Cache-Control", "Vary", "Content-Length", "Content-Security-Policy", "X-Content-Type-Options"];
        var contract = await Contract();
        var files = 0;
        foreach (var (path, operation) in Operations(contract).Where(entry => !entry.Path.Contains('{') && entry.Path != "/v1/batches"))
        {
            var said = operation["responses"]!["200"]!;
            foreach (var media in said["content"]!.AsObject().Select(media => media.Key))
            {
                using var request = new HttpRequestMessage(operation["requestBody"] is null ? HttpMethod.Get : HttpMethod.Post, path);
                request.Headers.Add("Accept", media);
                if (operation["requestBody"] is { } body)
                    request.Content = new StringContent(Media(body).First()["examples"]!.AsObject().First().Value!["value"]!.ToJsonString(), Encoding.UTF8, "application/json");
                using var response = await service.Client.SendAsync(request);
                Assert.True(response.IsSuccessStatusCode, $"{path} {media}");
                var names = response.Headers.Concat(response.Content.Headers).Select(header => header.Key).Except(unsaid).ToArray();
                Assert.All(names, name => Assert.True(said["headers"]?[name] is not null, $"{path} {media} {name}"));
                files += names.Contains("Content-Disposition") ? 1 : 0;
            }
        }

        Assert.Equal(9, files);
    }

    [Fact]
    public async Task Every_answer_with_a_body_says_its_media_type()
    {
        var contract = await Contract();
        foreach (var (path, operation) in Operations(contract))
        {
            foreach (var (status, response) in operation["responses"]!.AsObject())
            {
                var whole = Resolve(contract, response!);
                Assert.True(whole["content"] is not null == whole["headers"]?["Content-Type"] is not null, $"{path} {status}");
            }
        }
    }

    private static void AssertSaysSame(string code, string answered, params string[] aside)
    {
        var (said, shown) = (JsonNode.Parse(answered)!.AsObject(), ProblemResponses.ExampleOf(ProblemKinds.Find(code)!));
        foreach (var field in aside.Append("traceId"))
        {
            said.Remove(field);
            shown.Remove(field);
        }

        Assert.Equal(said.ToJsonString(), shown.ToJsonString());
    }

    private static IEnumerable<(string Path, JsonNode Operation)> Operations(JsonNode contract) =>
        contract["paths"]!.AsObject().SelectMany(path => path.Value!.AsObject().Select(method => (path.Key, method.Value!)));

    private static JsonNode Resolve(JsonNode contract, JsonNode part) => (string?)part["$ref"] is { } name
        ? name.Split('/').Skip(1).Aggregate(contract, (node, step) => node[step]!)
        : part;

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
                // What is left of a limit is never the same.
                Assert.True(HasExample(operation) || path == "/v1/limits", path);
                foreach (var parameter in operation["parameters"]?.AsArray() ?? [])
                    Assert.False(string.IsNullOrEmpty((string?)parameter!["description"]), path);
                if (method == "post")
                    Assert.All(StatusesOf(path), status => Assert.NotNull(operation["responses"]![status]));
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
            // A short answer's fields are described at the full one's, which its description names.
            if (name.StartsWith("Minimal", StringComparison.Ordinal))
            {
                Assert.Contains($"`{name["Minimal".Length..]}`", (string)schema["description"]!, StringComparison.Ordinal);
                continue;
            }

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
            var fields = schema!["allOf"]?.AsArray().Select(part => part!["properties"]).FirstOrDefault(own => own is not null) ?? schema["properties"];
            foreach (var (field, value) in fields!.AsObject())
            {
                var type = value!["type"]?.ToJsonString() ?? "";
                if (type.Contains("number", StringComparison.Ordinal))
                    Assert.True(value["maximum"] is not null && (value["minimum"] ?? value["exclusiveMinimum"]) is not null, name + "." + field);
            }
        }
    }

    [Theory]
    [InlineData("ArcInput", "sweep", "Range: 0.001 to 360°; -400 to 400° in a chain.")]
    [InlineData("ProgressiveInput", "sweep", "Range: 0.001 to 360°; -400 to 400° in a chain.")]
    [InlineData("MarksInput", "resolution", "Range: 0.001 to 100 on a mm tape; 0.0001 to 4 on an inch tape.")]
    public async Task A_range_that_depends_on_something_says_on_what(string schema, string field, string range)
    {
        var own = (await Contract())["components"]!["schemas"]![schema]!;
        var fields = own["properties"] ?? own["allOf"]![1]!["properties"]!;
        Assert.EndsWith(range, (string)fields[field]!["description"]!, StringComparison.Ordinal);
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

        var told = contract["components"]!["schemas"]!["CurveInput"]!["discriminator"]!["mapping"]!.AsObject().Select(kind => kind.Key);
        Assert.Equal(told.Order(), kinds.Order());
    }

    [Fact]
    [Trait("Category", "Long")]
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
    [InlineData("correctPanel", "PanelCorrection")]
    public async Task Accuracy_and_estimates_validate(string operation, string schema)
    {
        var contract = await Contract();
        foreach (var example in Requests.AccuracyExamples().Concat(Requests.EstimateExamples()).Concat(Requests.PanelExamples()).Where(example => (string)example[0] == operation))
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

    [Theory]
    [InlineData("""{"type":"arc","radius":90,"sweep":45}""", true)]
    [InlineData("""{"type":"arc","sweep":45}""", false)]
    [InlineData("""{"type":"arc","radius":90}""", false)]
    [InlineData("""{"type":"arc","radius":90,"sweep":45,"length":3}""", false)]
    [InlineData("""{"type":"spiral","radius":90,"sweep":45}""", false)]
    [InlineData("""{"radius":90,"sweep":45}""", false)]
    [InlineData("""{"type":"segments","segments":[{"type":"arc","radius":90,"sweep":45},{"type":"flat","length":20}]}""", true)]
    [InlineData("""{"type":"segments","segments":[{"type":"arc","radius":90,"sweep":45},{"type":"flat"}]}""", false)]
    [InlineData("null", false)]
    public async Task An_arc_needs_its_radius_wherever_a_curve_may_stand(string curve, bool isValid)
    {
        var contract = await Contract();
        var request = Requests.Arc();
        request["panel"]!["curve"] = JsonNode.Parse(curve);
        Assert.Equal(isValid, IsValid(contract, "FormRequest", request));
        if (curve != "null")
            Assert.Equal(isValid, IsValid(contract, "CurveInput", JsonNode.Parse(curve)!));
    }

    // A row of a comparison has its own deadline, and its own problem.
    private static IEnumerable<string> StatusesOf(string path) => path switch
    {
        "/v1/batches" => StreamStatuses,
        "/v1/comparisons" => Statuses.Except(["503"]),
        _ => Statuses,
    };

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
