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
        ["verifyEngine.one-table"] = "/v1/verification?table=bend-allowance-checks",
        ["explainProblem.invalid-values"] = "/problems/invalid-values",
        ["getLiveness.live"] = "/health/live",
        ["getStartup.started"] = "/health/startup",
        ["getReadiness.ready"] = "/health/ready",
    };

    // Operation and name of everything that lies there, and of every read: an example that nobody sends has no way past this.
    public static TheoryData<string> Names => [.. Directory.GetFiles(Repository.PathOf("openapi", "examples"))
        .Select(path => string.Join('.', Path.GetFileName(path).Split('.')[..^2])).Union(Reads.Keys).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task It_is_answered_as_committed(string name)
    {
        var stem = Repository.PathOf("openapi", "examples", name);
        var isDrawn = name.StartsWith("drawForm.", StringComparison.Ordinal);
        using var request = Reads.TryGetValue(name, out var path)
            ? new HttpRequestMessage(HttpMethod.Get, path)
            : new HttpRequestMessage(HttpMethod.Post, Requests.PathOf(name.Split('.')[0])) { Content = BodyOf(stem) };
        if (isDrawn)
            request.Headers.Accept.Add(new("image/svg+xml"));
        using var response = await service.Client.SendAsync(request);
        var bytes = await response.Content.ReadAsByteArrayAsync();
        Assert.True((int)response.StatusCode == 200, Encoding.UTF8.GetString(bytes));
        Repository.Compare(stem + (isDrawn ? ".answer.svg" : ".answer.json"), isDrawn ? bytes : Readable(bytes));
    }

    private static ByteArrayContent BodyOf(string stem)
    {
        var content = new ByteArrayContent(File.ReadAllBytes(stem + ".request.json"));
        content.Headers.ContentType = new("application/json");
        return content;
    }

    private static byte[] Readable(byte[] json) =>
        Encoding.UTF8.GetBytes(JsonNode.Parse(json)!.ToJsonString(Indented).ReplaceLineEndings("\n") + "\n");
}
