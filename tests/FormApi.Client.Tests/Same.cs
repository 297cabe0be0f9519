using System.Text.Json.Nodes;

namespace FormApi.Client.Tests;

/// <summary>Holds JSON against JSON.</summary>
public static class Same
{
    /// <summary>Everything of one is in the other with the same value; the other may hold more.</summary>
    public static void Within(JsonNode? part, JsonNode? whole, string place = "")
    {
        switch (part)
        {
            case JsonObject fields:
                foreach (var (name, value) in fields)
                {
                    Assert.True(whole is JsonObject other && other.ContainsKey(name), $"{place}/{name} is gone.");
                    Within(value, whole![name], $"{place}/{name}");
                }

                break;
            case JsonArray items:
                Assert.True(whole is JsonArray, $"{place} is no list.");
                Assert.Equal(items.Count, whole!.AsArray().Count);
                for (var i = 0; i < items.Count; i++)
                    Within(items[i], whole[i], $"{place}/{i}");
                break;
            default:
                Assert.True(AreEqual(part, whole), $"{place} was {part?.ToJsonString()} and is {whole?.ToJsonString()}.");
                break;
        }
    }

    /// <summary>A copy without the fields that are null: this generator leaves them out.</summary>
    public static JsonNode? WithoutNulls(JsonNode? node) => node switch
    {
        JsonObject fields => new JsonObject(fields.Where(field => field.Value is not null).Select(field => KeyValuePair.Create(field.Key, WithoutNulls(field.Value)))),
        JsonArray items => new JsonArray([.. items.Select(WithoutNulls)]),
        _ => node?.DeepClone(),
    };

    private static bool AreEqual(JsonNode? one, JsonNode? other) =>
        one?.GetValueKind() == System.Text.Json.JsonValueKind.Number && other?.GetValueKind() == System.Text.Json.JsonValueKind.Number
            ? one.GetValue<double>().Equals(other.GetValue<double>())
            : JsonNode.DeepEquals(one, other);
}
