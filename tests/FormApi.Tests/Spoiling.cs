using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Good requests, spoilt at random.</summary>
internal static class Spoiling
{
    private static readonly string[] Values =
    [
        "0", "-1", "1e308", "-1e308", "1e400", "1e-320", "0.000001", "1", "2", "3.5", "45", "89.9", "180", "359.9", "360", "1000", "99999", "1e5", "1e6",
        "null", "true", "\"NaN\"", "\"Infinity\"", "\"\"", "\"mm\"", "\"in\"", "\"arc\"", "\"full\"", "\"fewest-folds\"", "\"equal-spacing\"",
        "\"hidden\"", "\"gloss\"", "\"press\"", "\"ti-cp2\"", "\"al-2024-o\"", "\"al-1100-o\"", "\"outside\"", "\"far-edge\"", "\"centre\"", "\"wrapped\"",
        "[]", "{}", "[[]]", "[1,2]", "[null]", "2147483648", "1.5e1",
    ];

    /// <summary>The request itself one time in four, else with the quick model: solved plans cost a hundred times as much.</summary>
    /// <param name="seed">A good request.</param>
    /// <param name="round">Number of the request.</param>
    public static JsonObject MostlyQuick(JsonObject seed, int round)
    {
        if (round % 4 == 0 || seed["panel"] is not JsonObject || seed["stations"] is not null || seed["panel"]!["springback"] is not null)
            return seed;
        var body = seed.DeepClone().AsObject();
        body["panel"]!["springback"] = new JsonObject { ["model"] = "pure-bending" };
        return body;
    }

    /// <summary>A copy with one to three fields changed, now and then with a byte changed or the end cut off.</summary>
    /// <param name="seed">The good request.</param>
    /// <param name="random">Where chance comes from.</param>
    /// <param name="extras">Pointers of fields that the seed may lack.</param>
    public static byte[] Spoil(JsonObject seed, Random random, string[] extras)
    {
        var body = seed.DeepClone().AsObject();
        for (var changes = random.Next(1, 4); changes > 0; changes--)
        {
            if (random.Next(5) == 0)
                body = TrySet(body, extras[random.Next(extras.Length)], Values[random.Next(Values.Length)]);
            else
                ChangeOne(body, random);
        }

        var bytes = Encoding.UTF8.GetBytes(body.ToJsonString());
        if (random.Next(16) == 0)
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        return random.Next(40) == 0 ? bytes[..random.Next(bytes.Length)] : bytes;
    }

    /// <summary>A copy with numbers of the measured lists moved now and then: numbers in lists are no fields.</summary>
    /// <param name="seed">The good request.</param>
    /// <param name="random">Where chance comes from.</param>
    public static JsonObject WithSpoiltLists(JsonObject seed, Random random)
    {
        var body = seed.DeepClone().AsObject();
        if (random.Next(2) == 0 && body["measured"]?["angles"] is JsonArray { Count: > 0 } angles)
            angles[random.Next(angles.Count)] = NumberNode(random.NextDouble() * 40);
        if (random.Next(2) == 0 && body["measured"]?["points"] is JsonArray { Count: > 0 } points)
        {
            // A list of points for each flat of a form; a panel has one list.
            var point = points[random.Next(points.Count)]!.AsArray();
            (point[0] as JsonArray ?? point)[random.Next(2)] = NumberNode(random.NextDouble() * 100);
        }

        return body;
    }

    private static JsonObject TrySet(JsonObject body, string pointer, string value)
    {
        try
        {
            return body.With(pointer, value);
        }
        catch (Exception spoilt) when (spoilt is InvalidOperationException or FormatException or ArgumentOutOfRangeException)
        {
            // An earlier change put a plain value where this one needs an object.
            return body;
        }
    }

    private static void ChangeOne(JsonObject body, Random random)
    {
        var leaves = Leaves(body).ToArray();
        var numbers = leaves.Where(leaf => NumberAt(leaf) is not double.NaN).ToArray();
        var leaf = random.Next(6) > 0 && numbers.Length > 0 ? numbers[random.Next(numbers.Length)] : leaves[random.Next(leaves.Length)];
        var (parent, key) = leaf;
        var number = NumberAt(leaf);
        // Mostly numbers that may pass: a request that fails by its shape never reaches the calculation.
        switch (random.Next(20))
        {
            case 0:
                parent.Remove(key);
                break;
            case 1:
                parent[key + "x"] = JsonNode.Parse("1");
                break;
            case < 8 when double.IsFinite(number):
                parent[key] = NumberNode(number * Math.Pow(10, (random.NextDouble() * 4) - 2));
                break;
            case < 18 when double.IsFinite(number):
                parent[key] = NumberNode(number * (0.5 + random.NextDouble()));
                break;
            default:
                parent[key] = JsonNode.Parse(Values[random.Next(Values.Length)]);
                break;
        }
    }

    private static double NumberAt((JsonObject Parent, string Key) leaf) =>
        leaf.Parent[leaf.Key] is JsonValue value && value.GetValueKind() == JsonValueKind.Number ? value.GetValue<double>() : double.NaN;

    // A number changed twice may pass what a double takes: then it is one of JSON that no double takes.
    private static JsonNode? NumberNode(double number) => JsonNode.Parse(
        double.IsFinite(number) ? number.ToString("R", CultureInfo.InvariantCulture) : number > 0 ? "1e400" : "-1e400");

    private static IEnumerable<(JsonObject Parent, string Key)> Leaves(JsonNode node) => node switch
    {
        JsonObject fields => fields.SelectMany(field => field.Value is JsonObject or JsonArray { Count: > 0 }
            ? Leaves(field.Value).Append((fields, field.Key))
            : [(fields, field.Key)]),
        JsonArray items => items.OfType<JsonObject>().SelectMany(Leaves),
        _ => [],
    };
}
