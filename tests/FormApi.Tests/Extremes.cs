using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Good requests, driven to the ends of what may be sent.</summary>
internal static class Extremes
{
    // Stands for half a surrogate pair, which the JSON of this side would not write.
    private const string Half = "half-a-pair";

    // Ends of ranges, what lies just within or past them, and what loses its digits.
    private static readonly double[] Numbers =
    [
        5e-324, 1e-300, 1e-12, 1e-6, 1e-4, 0.001, 0.0011, 0.01, 0.02, 0.05, 0.1, 0.5, 0.501, 0.999999, 1, 1.0000001, 2, 3, 5, 10, 24.9, 25, 45, 49, 50, 75,
        89.999, 90, 99, 100, 149.9, 150, 170, 179.999, 180, 200, 270, 359, 359.999, 360, 400, 999, 1000, 1999, 2000, 5000, 1e4, 9.99e4, 1e5, 1e6, 1e9, 1e308,
    ];

    private static readonly string[] Others =
    [
        "null", "true", "[]", "{}", "\"\"", $"\"{Half}\"", $"[\"{Half}\"]", $"{{\"{Half}\":1}}", "\"in\"", "\"arc\"", "\"wrapped\"", "\"pure-bending\"", "\"full\"",
        "\"half\"", "\"equal-spacing\"", "\"equal-angle\"", "\"fewest-folds\"", "\"hidden\"", "\"mirror\"", "\"press\"", "\"leaf\"", "\"crawford\"", "\"unit\"",
    ];

    /// <summary>A copy with one to four values driven to an end, lists grown now and then.</summary>
    /// <param name="seed">The good request.</param>
    /// <param name="random">Where chance comes from.</param>
    /// <param name="extras">Pointers of fields that the seed may lack.</param>
    public static byte[] Drive(JsonObject seed, Random random, string[] extras)
    {
        var body = seed.DeepClone().AsObject();
        for (var changes = random.Next(1, 5); changes > 0; changes--)
        {
            try
            {
                body = Changed(body, random, extras);
            }
            catch (Exception spoilt) when (spoilt is InvalidOperationException or FormatException or ArgumentOutOfRangeException)
            {
                // An earlier change put a plain value where this one needs an object.
            }
        }

        return Encoding.UTF8.GetBytes(body.ToJsonString().Replace(Half, "\\ud800", StringComparison.Ordinal));
    }

    private static JsonObject Changed(JsonObject body, Random random, string[] extras)
    {
        switch (random.Next(10))
        {
            case 0:
                Grow(body, random);
                return body;
            case < 4:
                return body.With(extras[random.Next(extras.Length)], random.Next(4) == 0 ? Others[random.Next(Others.Length)] : Number(random));
            default:
                Change(body, random);
                return body;
        }
    }

    private static string Number(Random random)
    {
        var number = Numbers[random.Next(Numbers.Length)] * (random.Next(12) == 0 ? -1 : 1);
        return (random.Next(3) == 0 ? Math.Round(number) : number).ToString("R", CultureInfo.InvariantCulture);
    }

    private static void Change(JsonObject body, Random random)
    {
        var leaves = Leaves(body).ToArray();
        var leaf = leaves[random.Next(leaves.Length)];
        var isNumber = leaf.Value is JsonValue value && value.GetValueKind() == JsonValueKind.Number;
        var text = isNumber && random.Next(20) > 0 ? Number(random) : Others[random.Next(Others.Length)];
        var scaled = isNumber && random.Next(4) == 0 ? leaf.Value!.GetValue<double>() * Math.Pow(10, random.Next(-4, 5)) : double.NaN;
        leaf.Set(JsonNode.Parse(double.IsFinite(scaled) ? scaled.ToString("R", CultureInfo.InvariantCulture) : text));
    }

    private static void Grow(JsonObject body, Random random)
    {
        var lists = Lists(body).Where(list => list.Count > 0).ToArray();
        if (lists.Length == 0)
            return;
        var list = lists[random.Next(lists.Length)];
        var times = new[] { 2, 10, 30, 100, 1000 }[random.Next(5)];
        var item = list[random.Next(list.Count)];
        for (var i = list.Count; i < times; i++)
            list.Add(item?.DeepClone());
    }

    private static IEnumerable<JsonArray> Lists(JsonNode? node) => node switch
    {
        JsonObject fields => fields.SelectMany(field => Lists(field.Value)),
        JsonArray items => items.SelectMany(Lists).Append(items),
        _ => [],
    };

    private static IEnumerable<Leaf> Leaves(JsonNode? node) => node switch
    {
        JsonObject fields => fields.SelectMany(field => field.Value is JsonObject or JsonArray { Count: > 0 }
            ? Leaves(field.Value)
            : [new(field.Value, value => fields[field.Key] = value)]),
        JsonArray items => items.SelectMany((item, i) => item is JsonObject or JsonArray { Count: > 0 }
            ? Leaves(item)
            : [new(item, value => items[i] = value)]),
        _ => [],
    };

    private sealed record Leaf(JsonNode? Value, Action<JsonNode?> Set);
}
