using System.Text.Json.Nodes;

namespace FormApi.Contract;

/// <summary>Working examples, embedded in the service: <c>operation.name.request.json</c> and <c>operation.name.answer.json</c>.</summary>
internal static class Examples
{
    private const string Prefix = "examples/";

    private static readonly ILookup<(string Operation, string Part), Example> All = typeof(Examples).Assembly.GetManifestResourceNames()
        .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
        .Order(StringComparer.Ordinal)
        .Select(Read)
        .ToLookup(example => (example.Operation, example.Part));

    /// <summary>The examples of an operation.</summary>
    /// <param name="operation">Name of the operation.</param>
    /// <param name="part"><c>request</c> or <c>answer</c>.</param>
    public static IEnumerable<Example> Of(string operation, string part) => All[(operation, part)];

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
