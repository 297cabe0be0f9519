using System.Text.Json.Nodes;

namespace FormApi.Contract;

/// <summary>Working examples, embedded in the service: <c>operation.name.request.json</c> and <c>operation.name.answer.json</c>.</summary>
internal static class Examples
{
    private const string Prefix = "examples/";

    // Links hold a whole request, cautions a paragraph.
    private const int LongestText = 9;

    // A word of the contract stays whole.
    private const int LongestWord = 20;

    // Enough for a point, and to see that it is a list.
    private const int MostNumbers = 3;

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

    /// <summary>
    /// The first answer of an operation, its lists cut to one record or three numbers each and its texts cut short, its request as it was
    /// sent: it shows every field; the whole answers are files.
    /// </summary>
    /// <param name="operation">Name of the operation.</param>
    public static IEnumerable<Example> Short(string operation) =>
        Of(operation, "answer").Take(operation.EndsWith("Link", StringComparison.Ordinal) || operation == "computeBatch" ? 0 : 1)
            .Select(example => example with { Body = Shorten(example.Body, SentFor(example))! });

    // As sent, it leaves out what has a default, and names what nobody gave only in the echo.
    private static JsonNode? SentFor(Example answer) => All[(answer.Operation, "request")]
        .Where(request => request.Name == answer.Name)
        .Select(request => OneOfEach(request.Body))
        .FirstOrDefault();

    private static JsonNode? Shorten(JsonNode? node, JsonNode? request = null) => node switch
    {
        JsonObject fields => new JsonObject(fields.Select(
            field => KeyValuePair.Create(field.Key, field.Key == "request" && request is not null ? request : Shorten(field.Value)))),
        JsonArray items when items.FirstOrDefault() is JsonValue =>
            new JsonArray([.. items.Take(MostNumbers).Select(item => item?.DeepClone())]),
        JsonArray items => new JsonArray([.. items.Take(1).Select(item => Shorten(item))]),
        JsonValue value when value.TryGetValue<string>(out var text) && text.Length > (text.Contains(' ') ? LongestText : LongestWord) =>
            text[..LongestText] + "…",
        _ => node?.DeepClone(),
    };

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
