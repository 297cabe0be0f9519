using System.Text.Json.Nodes;

namespace FormApi.Contract;

/// <summary>Working examples, embedded in the service: <c>operation.name.request.json</c> and <c>operation.name.answer.json</c>.</summary>
internal static class Examples
{
    private const string Prefix = "examples/";

    // The contract has 300 KB; longer answers are files beside it.
    private const int LongestAnswer = 410;

    private static readonly ILookup<(string Operation, string Part), Example> All = typeof(Examples).Assembly.GetManifestResourceNames()
        .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
        .Order(StringComparer.Ordinal)
        .Select(Read)
        .ToLookup(example => (example.Operation, example.Part));

    /// <summary>The examples of an operation.</summary>
    /// <param name="operation">Name of the operation.</param>
    /// <param name="part"><c>request</c> or <c>answer</c>.</param>
    public static IEnumerable<Example> Of(string operation, string part) => operation switch
    {
        "openFormLink" => All[("computeForm", part)].Take(1),
        "openProgramLink" => All[("programBrake", part)].Take(1),
        "computeBatch" => All[("computeForm", part)].Take(1).Select(example => example with { Body = LineOf(example) }),
        _ => All[(operation, part)],
    };

    /// <summary>The first request of an operation; all of them are files.</summary>
    /// <param name="operation">Name of the operation.</param>
    public static IEnumerable<Example> FirstRequest(string operation) => Of(operation, "request").Take(1);

    /// <summary>The first answer of an operation with one record a list, where that is short; all of them are files.</summary>
    /// <param name="operation">Name of the operation.</param>
    public static IEnumerable<Example> ShortAnswer(string operation) => Of(operation, "answer").Take(1)
        .Select(example => example with { Body = OneOfEach(example.Body)! })
        .Where(example => example.Body.ToJsonString().Length <= LongestAnswer);

    private static JsonNode? OneOfEach(JsonNode? node) => node switch
    {
        JsonObject fields => new JsonObject(fields.Select(field => KeyValuePair.Create(field.Key, OneOfEach(field.Value)))),
        JsonArray items when items.FirstOrDefault() is JsonObject => new JsonArray([OneOfEach(items[0])]),
        _ => node?.DeepClone(),
    };

    /// <summary>The text of a link that an answer of an operation holds, or null where none does.</summary>
    /// <param name="operation">Name of the operation.</param>
    /// <param name="what">What the link leads to.</param>
    public static string? LinkTextIn(string operation, string what) =>
        All[(operation, "answer")].Select(example => (string?)example.Body["links"]?[what]).FirstOrDefault(link => link is not null)?.Split('/')[3];

    private static JsonObject LineOf(Example example) => example.Part == "request"
        ? new() { ["id"] = example.Name, ["operation"] = "form", ["request"] = example.Body.DeepClone() }
        : new() { ["line"] = 1, ["id"] = example.Name, ["status"] = 200, ["answer"] = example.Body.DeepClone() };

    private static Example Read(string resource)
    {
        var parts = resource[Prefix.Length..].Split('.');
        using var stream = typeof(Examples).Assembly.GetManifestResourceStream(resource)!;
        return new(parts[0], parts[1], parts[2], JsonNode.Parse(stream)!);
    }
}

/// <summary>One example.</summary>
/// <param name="Operation">Name of the operation.</param>
/// <param name="Name">Name of the example.</param>
/// <param name="Part"><c>request</c> or <c>answer</c>.</param>
/// <param name="Body">The body.</param>
internal sealed record Example(string Operation, string Name, string Part, JsonNode Body);
