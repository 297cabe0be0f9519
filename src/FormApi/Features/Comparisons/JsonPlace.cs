using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FormApi.Features.Comparisons;

/// <summary>Places in a document by JSON pointer (RFC 6901), and values put there.</summary>
internal static class JsonPlace
{
    /// <summary>Whether a value can be put at a place: everything on the way is an object, is made, or is an item that exists.</summary>
    /// <param name="document">The document, an object.</param>
    /// <param name="pointer">Where.</param>
    public static bool CanBeSet(JsonElement document, string pointer)
    {
        if (!pointer.StartsWith('/') || document.ValueKind != JsonValueKind.Object)
            return false;
        var here = (JsonElement?)document;
        foreach (var name in NamesIn(pointer))
        {
            switch (here?.ValueKind)
            {
                case null or JsonValueKind.Null:
                    here = null;
                    break;
                case JsonValueKind.Object:
                    here = here.Value.TryGetProperty(name, out var member) ? member : null;
                    break;
                case JsonValueKind.Array when IndexOf(name) is { } index && index < here.Value.GetArrayLength():
                    here = here.Value[index];
                    break;
                default:
                    return false;
            }
        }

        return true;
    }

    /// <summary>Puts a value at a place.</summary>
    /// <param name="document">The document, changed.</param>
    /// <param name="pointer">Where; <see cref="CanBeSet"/>.</param>
    /// <param name="json">The value's JSON.</param>
    public static void Set(JsonNode document, string pointer, string json)
    {
        var names = NamesIn(pointer);
        var here = document;
        foreach (var name in names[..^1])
        {
            var next = here is JsonArray items ? items[IndexOf(name)!.Value] : here[name];
            if (next is null)
                here[name] = next = new JsonObject();
            here = next;
        }

        if (here is JsonArray list)
            list[IndexOf(names[^1])!.Value] = JsonNode.Parse(json);
        else
            here[names[^1]] = JsonNode.Parse(json);
    }

    private static string[] NamesIn(string pointer) => [.. pointer.Split('/').Skip(1)
        .Select(name => name.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];

    private static int? IndexOf(string name) =>
        int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? index : null;
}
