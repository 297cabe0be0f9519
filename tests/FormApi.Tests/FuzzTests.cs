using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit.Abstractions;

namespace FormApi.Tests;

/// <summary>Thousands of spoilt requests, from a fixed seed: none may give a 5xx, none may give an answer with a hole in it.</summary>
public sealed class FuzzTests(Service service, ITestOutputHelper output) : IClassFixture<Service>
{
    private const int Rounds = 4000;
    private const int StripRounds = 3000;
    private const int ProgramRounds = 300;
    private const int Seed = 20240611;

    private static readonly string[] Values =
    [
        "0", "-1", "1e308", "-1e308", "1e400", "1e-320", "0.000001", "1", "2", "3.5", "45", "89.9", "180", "359.9", "360", "1000", "99999", "1e5", "1e6",
        "null", "true", "\"NaN\"", "\"Infinity\"", "\"\"", "\"mm\"", "\"in\"", "\"arc\"", "\"full\"", "\"fewest-folds\"", "\"equal-spacing\"",
        "\"hidden\"", "\"gloss\"", "\"press\"", "\"ti-cp2\"", "\"al-2024-o\"", "\"al-1100-o\"", "\"outside\"", "\"far-edge\"", "\"centre\"", "\"wrapped\"",
        "[]", "{}", "[[]]", "[1,2]", "[null]", "2147483648", "1.5e1",
    ];

    private static readonly string[] Extras =
    [
        "/panel/mirrored", "/panel/surface", "/panel/finish", "/panel/grain", "/panel/lever", "/panel/trim", "/panel/clamp/gap", "/panel/clamp/height",
        "/panel/springback/factor", "/panel/springback/model", "/panel/springback/effectiveYield", "/panel/allowedRipple", "/panel/allowedSlope",
        "/panel/material/yield", "/panel/material/ultimate", "/form/width", "/form/grain", "/form/neutralFactor", "/form/stop/offset", "/form/stop/slope",
        "/form/stepping/folds", "/form/stepping/angle", "/form/stepping/spacing", "/form/stepping/maxFacet", "/form/stepping/rule", "/form/stepping/ends",
        "/brake/kind", "/brake/reach", "/brake/capacity/thickness", "/brake/capacity/ultimate", "/brake/minFacet", "/brake/stopResolution",
        "/marks/datum", "/marks/tape", "/marks/resolution", "/predict", "/form/stepping/refine",
    ];

    private static readonly string[] StripExtras =
    [
        "/units", "/thickness", "/gauge", "/material/yield", "/material/ultimate", "/readingError", "/readingError/length", "/readingError/angle",
        "/assumedSlope", "/slopeError", "/stopResolution", "/measuredTo", "/targets", "/strips/0/thickness", "/strips/0/lever", "/strips/0/firstFacet",
        "/strips/0/verdict", "/strips/0/angle", "/strips/0/finishedRadius", "/strips/0/insideRadius",
    ];

    private static readonly string[] AccuracyExtras =
    [
        "/units", "/accuracy/bias", "/accuracy/scatter", "/accuracy/markScatter", "/tolerance/closing", "/tolerance/end", "/tolerance/coverage",
        "/tolerance/vertex", "/corrections/step", "/corrections/maxSteps", "/corrections/direction", "/measured/angles", "/measured/facets",
        "/measured/spacings", "/measured/points", "/ends", "/form/neutralFactor", "/form/stepping/folds", "/panel/curve/sweep", "/stations",
    ];

    private static readonly string[] ProgramExtras =
    [
        "/panel/leadOut", "/form/width", "/form/neutralFactor", "/form/stop/offset", "/form/stop/slope", "/form/stepping/folds", "/brake/kind", "/brake/dieOpening",
        "/brake/reach", "/brake/minFacet", "/brake/capacity/thickness", "/brake/stopResolution", "/brake/tools/clearance", "/brake/tools/plenty",
        "/brake/tools/leastLift", "/brake/tools/overTravel", "/brake/tools/openEnd", "/brake/tools/gauge/min", "/brake/tools/gauge/max", "/brake/tools/stopHeight",
        "/brake/tools/opening", "/brake/tools/beam", "/brake/tools/punch", "/brake/tools/minRun", "/brake/tools/minLand", "/brake/tools/lever",
        "/brake/tools/holder/width", "/brake/tools/ram/height", "/brake/tools/forceCapacity", "/stations", "/stations/0/angle", "/stations/1/facetAfter",
    ];

    [Fact]
    public async Task No_spoilt_request_breaks_the_service()
    {
        var random = new Random(Seed);
        var seeds = Requests.Examples().Select(example => example.Body).Append(Requests.Arc()).ToArray();
        var tally = new SortedDictionary<int, int>();
        for (var round = 0; round < Rounds; round++)
        {
            var body = Spoil(seeds[random.Next(seeds.Length)], random);
            using var response = await service.Post("/v1/forms", body);
            var status = (int)response.StatusCode;
            tally[status] = tally.GetValueOrDefault(status) + 1;
            var text = await response.Content.ReadAsStringAsync();
            Assert.True(status is 200 or 400 or 422, $"{status} in round {round}: {text}\n{Encoding.UTF8.GetString(body)}");
            using var answer = JsonDocument.Parse(text);
            if (status == 200)
                AssertWhole(answer.RootElement);
            else
                Assert.NotEmpty(answer.RootElement.GetProperty("errors").EnumerateArray());
        }

        output.WriteLine(string.Join(", ", tally.Select(entry => $"{entry.Key}: {entry.Value}")));
        Assert.True(tally.GetValueOrDefault(200) > Rounds / 20, "Too few requests got through to the calculation.");
    }

    [Fact]
    public async Task No_spoilt_prediction_breaks_the_service()
    {
        var random = new Random(Seed);
        var seeds = Requests.Predictions().Select(example => example.Body).Append(Requests.Standing()).ToArray();
        var wrapped = 0;
        for (var round = 0; round < Rounds / 4; round++)
        {
            var body = Spoil(seeds[random.Next(seeds.Length)], random);
            using var response = await service.Post("/v1/forms/prediction", body);
            var status = (int)response.StatusCode;
            var text = await response.Content.ReadAsStringAsync();
            Assert.True(status is 200 or 400 or 422, $"{status} in round {round}: {text}\n{Encoding.UTF8.GetString(body)}");
            using var answer = JsonDocument.Parse(text);
            if (status == 200)
                wrapped += AssertTold(answer.RootElement) ? 1 : 0;
            else
                Assert.NotEmpty(answer.RootElement.GetProperty("errors").EnumerateArray());
        }

        output.WriteLine($"{wrapped} wrapped");
        Assert.True(wrapped > Rounds / 40, "Too few requests got through to the calculation.");
    }

    [Fact]
    public async Task No_spoilt_program_breaks_the_service()
    {
        var random = new Random(Seed);
        var seeds = Requests.Programs().Select(example => example.Body).Append(Requests.Program()).Append(Requests.Hoop()).ToArray();
        var tally = new SortedDictionary<int, int>();
        for (var round = 0; round < ProgramRounds; round++)
        {
            var body = Spoil(seeds[random.Next(seeds.Length)], random, ProgramExtras);
            using var response = await service.Post("/v1/programs", body);
            var status = (int)response.StatusCode;
            tally[status] = tally.GetValueOrDefault(status) + 1;
            var text = await response.Content.ReadAsStringAsync();
            // A search that a busy machine cut short is a 503 and never half an answer; all else is the caller's.
            Assert.True(status is 200 or 400 or 422 or 503, $"{status} in round {round}: {text}\n{Encoding.UTF8.GetString(body)}");
            using var answer = JsonDocument.Parse(text);
            if (status == 200)
                AssertFoldable(answer.RootElement);
            else if (status != 503)
                Assert.NotEmpty(answer.RootElement.GetProperty("errors").EnumerateArray());
        }

        output.WriteLine(string.Join(", ", tally.Select(entry => $"{entry.Key}: {entry.Value}")));
        Assert.True(tally.GetValueOrDefault(503) < ProgramRounds / 20, "Too many searches were cut short.");
        Assert.True(tally.GetValueOrDefault(200) > ProgramRounds / 20, "Too few requests got through to the calculation.");
    }

    // Every fold once, numbered in order, none of them striking anything.
    private static void AssertFoldable(JsonElement answer)
    {
        Assert.NotEqual("cannot-be-made", answer.GetProperty("verdict").GetString());
        var steps = answer.GetProperty("steps").EnumerateArray().ToArray();
        Assert.Equal(Enumerable.Range(1, steps.Length), steps.Select(step => step.GetProperty("number").GetInt32()));
        Assert.Equal(Enumerable.Range(1, steps.Length), steps.Select(step => step.GetProperty("fold").GetInt32()).Order());
        foreach (var step in steps)
            Assert.True(step.GetProperty("clearance").GetDouble() > 0, step.GetRawText());
        foreach (var check in answer.GetProperty("checks").EnumerateArray())
            Assert.NotEqual("fail", check.GetProperty("verdict").GetString());
    }

    // Either the panel wraps and every figure is there, or it does not and says why.
    private static bool AssertTold(JsonElement answer)
    {
        var wraps = answer.GetProperty("wraps").GetBoolean();
        Assert.Equal(!wraps, answer.GetProperty("reason").ValueKind == JsonValueKind.String);
        foreach (var field in new[] { "sweep", "wantedSweep", "miss", "curve" })
            Assert.Equal(wraps, answer.GetProperty(field).ValueKind != JsonValueKind.Null);
        foreach (var field in new[] { "force", "clampMoment", "clampLoad", "endAngle", "energyReleased" })
            Assert.Equal(wraps, answer.GetProperty("pull").GetProperty(field).ValueKind == JsonValueKind.Number);
        var ripple = answer.GetProperty("ripple");
        Assert.Equal(ripple.GetProperty("known").GetBoolean(), ripple.GetProperty("height").ValueKind == JsonValueKind.Number);
        Assert.True(wraps || !ripple.GetProperty("known").GetBoolean());
        return wraps;
    }

    [Fact]
    public async Task No_spoilt_strip_breaks_the_service()
    {
        var random = new Random(Seed);
        var seeds = Requests.StripExamples().Select(example => (Operation: (string)example[0], Body: Requests.Example((string)example[0], (string)example[1]))).ToArray();
        var tally = new SortedDictionary<(string, int), int>();
        for (var round = 0; round < StripRounds; round++)
        {
            var (operation, seed) = seeds[round % seeds.Length];
            var body = Spoil(seed, random, StripExtras);
            using var response = await service.Post(Requests.PathOf(operation), body);
            var status = (int)response.StatusCode;
            tally[(operation, status)] = tally.GetValueOrDefault((operation, status)) + 1;
            var text = await response.Content.ReadAsStringAsync();
            Assert.True(status is 200 or 400 or 422, $"{status} in round {round}: {text}\n{Encoding.UTF8.GetString(body)}");
            using var answer = JsonDocument.Parse(text);
            if (status == 200)
                AssertLearnt(answer.RootElement);
            else
                Assert.NotEmpty(answer.RootElement.GetProperty("errors").EnumerateArray());
        }

        output.WriteLine(string.Join(", ", tally.Select(entry => $"{entry.Key}: {entry.Value}")));
        foreach (var operation in seeds.Select(seed => seed.Operation).Distinct())
            Assert.True(tally.GetValueOrDefault((operation, 200)) > StripRounds / 50, $"Too few requests of {operation} got through to the calculation.");
    }

    [Fact]
    public async Task No_spoilt_measurement_breaks_the_service()
    {
        var random = new Random(Seed);
        var seeds = Requests.AccuracyExamples().Select(example => (Operation: (string)example[0], Body: Requests.Example((string)example[0], (string)example[1]))).ToArray();
        var tally = new SortedDictionary<(string, int), int>();
        for (var round = 0; round < StripRounds / 3; round++)
        {
            var (operation, seed) = seeds[round % seeds.Length];
            var body = Spoil(WithSpoiltLists(seed, random), random, AccuracyExtras);
            using var response = await service.Post(Requests.PathOf(operation), body);
            var status = (int)response.StatusCode;
            tally[(operation, status)] = tally.GetValueOrDefault((operation, status)) + 1;
            var text = await response.Content.ReadAsStringAsync();
            Assert.True(status is 200 or 400 or 422, $"{status} in round {round}: {text}\n{Encoding.UTF8.GetString(body)}");
            using var answer = JsonDocument.Parse(text);
            if (status == 200)
                AssertAccountedFor(answer.RootElement);
            else
                Assert.NotEmpty(answer.RootElement.GetProperty("errors").EnumerateArray());
        }

        output.WriteLine(string.Join(", ", tally.Select(entry => $"{entry.Key}: {entry.Value}")));
        foreach (var operation in seeds.Select(seed => seed.Operation).Distinct())
            Assert.True(tally.GetValueOrDefault((operation, 200)) > StripRounds / 60, $"Too few requests of {operation} got through to the calculation.");
    }

    // Numbers in lists are no fields: one of them is moved here.
    private static JsonObject WithSpoiltLists(JsonObject seed, Random random)
    {
        var body = seed.DeepClone().AsObject();
        if (random.Next(2) == 0 && body["measured"]?["angles"] is JsonArray { Count: > 0 } angles)
            angles[random.Next(angles.Count)] = NumberNode(random.NextDouble() * 40);
        if (random.Next(2) == 0 && body["measured"]?["points"] is JsonArray { Count: > 0 } points)
            points[random.Next(points.Count)]![0]![random.Next(2)] = NumberNode(random.NextDouble() * 100);
        return body;
    }

    private static void AssertAccountedFor(JsonElement answer)
    {
        Assert.NotEmpty(answer.GetProperty("basis").EnumerateArray());
        if (answer.TryGetProperty("corrections", out var corrections))
        {
            Assert.Equal(corrections.GetProperty("found").GetBoolean(), corrections.GetProperty("closing").ValueKind == JsonValueKind.Number);
            Assert.True(!corrections.GetProperty("found").GetBoolean() || corrections.GetProperty("folds").GetArrayLength() == corrections.GetProperty("lowerBound").GetInt32());
            var panel = answer.GetProperty("panel");
            Assert.Equal(panel.GetProperty("reason").ValueKind == JsonValueKind.String, panel.GetProperty("planned").ValueKind == JsonValueKind.Null);
            return;
        }

        var end = answer.GetProperty("end");
        var ellipse = end.GetProperty("ellipse");
        Assert.True(ellipse.GetProperty("semiMinor").GetDouble() <= ellipse.GetProperty("semiMajor").GetDouble());
        Assert.True(end.GetProperty("covariance").GetProperty("xx").GetDouble() >= 0);
        Assert.True(answer.GetProperty("closing").GetProperty("scatter").GetDouble() >= 0);
    }

    // Every interval stands the right way round about its value.
    private static void AssertLearnt(JsonElement answer)
    {
        Assert.NotEmpty(answer.GetProperty("changes").GetString()!);
        Assert.NotEmpty(answer.GetProperty("next").GetProperty("text").GetString()!);
        AssertIntervals(answer);
    }

    private static void AssertIntervals(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in element.EnumerateArray())
                AssertIntervals(item);
        }
        else if (element.ValueKind == JsonValueKind.Object)
        {
            if (element.TryGetProperty("confidence", out _))
            {
                var value = element.GetProperty("value").GetDouble();
                var (low, high) = (element.GetProperty("low"), element.GetProperty("high"));
                Assert.True(low.ValueKind == JsonValueKind.Null || low.GetDouble() <= value, element.GetRawText());
                Assert.True(high.ValueKind == JsonValueKind.Null || high.GetDouble() >= value, element.GetRawText());
            }

            foreach (var field in element.EnumerateObject())
                AssertIntervals(field.Value);
        }
    }

    private static byte[] Spoil(JsonObject seed, Random random) => Spoil(seed, random, Extras);

    private static byte[] Spoil(JsonObject seed, Random random, string[] extras)
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

    private static JsonNode? NumberNode(double number) => JsonNode.Parse(number.ToString("R", CultureInfo.InvariantCulture));

    private static IEnumerable<(JsonObject Parent, string Key)> Leaves(JsonNode node) => node switch
    {
        JsonObject fields => fields.SelectMany(field => field.Value is JsonObject or JsonArray { Count: > 0 }
            ? Leaves(field.Value).Append((fields, field.Key))
            : [(fields, field.Key)]),
        JsonArray items => items.OfType<JsonObject>().SelectMany(Leaves),
        _ => [],
    };

    private static void AssertWhole(JsonElement answer)
    {
        Assert.True(answer.GetProperty("form").GetProperty("sweep").GetDouble() > 0);
        var stations = answer.GetProperty("form").GetProperty("stations");
        Assert.Equal(answer.GetProperty("form").GetProperty("folds").GetInt32(), stations.GetArrayLength());
        var last = 0.0;
        foreach (var station in stations.EnumerateArray())
        {
            foreach (var field in new[] { "at", "mark", "sightLine", "angle", "runningAngle", "facetAfter", "straightAfter" })
                Assert.True(double.IsFinite(station.GetProperty(field).GetDouble()), field);
            Assert.True(station.GetProperty("runningAngle").GetDouble() > last);
            last = station.GetProperty("runningAngle").GetDouble();
        }

        foreach (var check in answer.GetProperty("checks").EnumerateArray())
            Assert.True(check.GetProperty("verdict").GetString() != "fail" || check.GetProperty("remedy").ValueKind == JsonValueKind.String, check.GetRawText());
    }
}
