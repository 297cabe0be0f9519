using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Every example of the contract is sent, and its answer compared with the committed one.</summary>
public sealed class ExamplesTests(Service service) : IClassFixture<Service>
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static readonly Dictionary<string, string> Reads = new()
    {
        ["listMaterials.all"] = "/v1/materials",
        ["getMaterial.stainless-304"] = "/v1/materials/ss-304",
        ["listGauges.all"] = "/v1/gauges",
        ["listReferences.all"] = "/v1/references",
        ["explainProblem.invalid-values"] = "/problems/invalid-values",
        ["getLiveness.live"] = "/health/live",
        ["getReadiness.ready"] = "/health/ready",
    };

    public static TheoryData<string> Posts => [.. Requests.Examples().Select(example => example.Name)];

    public static TheoryData<string> Predictions => [.. Requests.Predictions().Select(example => example.Name)];

    public static TheoryData<string> Programs => [.. Requests.Programs().Select(example => example.Name)];

    public static TheoryData<string, string> Strips => Requests.StripExamples();

    public static TheoryData<string, string> Accuracy => Requests.AccuracyExamples();

    public static TheoryData<string> Gets => [.. Reads.Keys];

    [Theory]
    [MemberData(nameof(Posts))]
    public async Task A_computation_answers_as_committed(string name)
    {
        var stem = Repository.PathOf("openapi", "examples", "computeForm." + name);
        using var response = await service.Post("/v1/forms", await File.ReadAllBytesAsync(stem + ".request.json"));
        await Compare(response, stem + ".answer.json");
    }

    [Theory]
    [MemberData(nameof(Predictions))]
    public async Task A_prediction_answers_as_committed(string name)
    {
        var stem = Repository.PathOf("openapi", "examples", "predictPanel." + name);
        using var response = await service.Post("/v1/forms/prediction", await File.ReadAllBytesAsync(stem + ".request.json"));
        await Compare(response, stem + ".answer.json");
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public async Task A_program_answers_as_committed(string name)
    {
        var stem = Repository.PathOf("openapi", "examples", "programBrake." + name);
        using var response = await service.Post("/v1/programs", await File.ReadAllBytesAsync(stem + ".request.json"));
        await Compare(response, stem + ".answer.json");
    }

    [Theory]
    [MemberData(nameof(Strips))]
    [MemberData(nameof(Accuracy))]
    public async Task Strips_and_accuracy_answer_as_committed(string operation, string name)
    {
        var stem = Repository.PathOf("openapi", "examples", operation + "." + name);
        using var response = await service.Post(Requests.PathOf(operation), await File.ReadAllBytesAsync(stem + ".request.json"));
        await Compare(response, stem + ".answer.json");
    }

    [Theory]
    [MemberData(nameof(Gets))]
    public async Task A_table_answers_as_committed(string name)
    {
        using var response = await service.Client.GetAsync(Reads[name]);
        await Compare(response, Repository.PathOf("openapi", "examples", name + ".answer.json"));
    }

    private static async Task Compare(HttpResponseMessage response, string path)
    {
        var text = await response.Content.ReadAsStringAsync();
        Assert.True((int)response.StatusCode == 200, text);
        Repository.Compare(path, Encoding.UTF8.GetBytes(JsonNode.Parse(text)!.ToJsonString(Indented).ReplaceLineEndings("\n") + "\n"));
    }
}
