using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit.Abstractions;

namespace FormApi.Tests;

/// <summary>Spoilt requests, from a fixed seed: none may give a 5xx, none may give an answer with a hole in it.</summary>
/// <remarks>What a request may cost is held by <see cref="HuntTests"/>, which measure processor time.</remarks>
public sealed class FuzzTests(Service service, ITestOutputHelper output) : IClassFixture<Service>
{
    private const int Rounds = 1000;
    private const int StripRounds = 750;
    private const int PanelRounds = 120;
    private const int ProgramRounds = 100;
    private const int EstimateRounds = 250;
    private const int Seed = 20240611;

    internal static readonly string[] Extras =
    [
        "/panel/mirrored", "/panel/surface", "/panel/finish", "/panel/grain", "/panel/lever", "/panel/trim", "/panel/clamp/gap", "/panel/clamp/height",
        "/panel/springback/factor", "/panel/springback/model", "/panel/springback/effectiveYield", "/panel/allowedRipple", "/panel/allowedSlope",
        "/panel/material/yield", "/panel/material/ultimate", "/panel/pull/by/people", "/panel/pull/by/rated", "/form/backing", "/form/width", "/form/grain", "/form/neutralFactor", "/form/stop/offset", "/form/stop/slope",
        "/form/stepping/folds", "/form/stepping/angle", "/form/stepping/spacing", "/form/stepping/maxFacet", "/form/stepping/rule", "/form/stepping/ends",
        "/brake/kind", "/brake/reach", "/brake/capacity/thickness", "/brake/capacity/ultimate", "/brake/minFacet", "/brake/stopResolution",
        "/marks/datum", "/marks/tape", "/marks/resolution", "/panel/tolerance/angle", "/panel/tolerance/radius", "/panel/tolerance/profile",
    ];

    internal static readonly string[] StripExtras =
    [
        "/units", "/thickness", "/gauge", "/material/yield", "/material/ultimate", "/readingError", "/readingError/length", "/readingError/angle",
        "/assumedSlope", "/slopeError", "/stopResolution", "/measuredTo", "/targets", "/strips/0/thickness", "/strips/0/lever", "/strips/0/firstFacet",
        "/strips/0/verdict", "/strips/0/angle", "/strips/0/finishedRadius", "/strips/0/insideRadius", "/strips/0/over", "/strips/0/width",
        "/strips/0/finishedSweep", "/strips/0/stations", "/strips/0/stations/1/angle", "/strips/0/stations/1/facetAfter", "/sweepError", "/foldError", "/tolerance",
    ];

    internal static readonly string[] AccuracyExtras =
    [
        "/units", "/accuracy/bias", "/accuracy/scatter", "/accuracy/markScatter", "/tolerance/closing", "/tolerance/end", "/tolerance/coverage",
        "/tolerance/vertex", "/corrections/step", "/corrections/maxSteps", "/corrections/direction", "/measured/angles", "/measured/facets",
        "/measured/spacings", "/measured/points", "/ends", "/form/neutralFactor", "/form/stepping/folds", "/panel/curve/sweep", "/stations",
    ];

    internal static readonly string[] PanelExtras =
    [
        "/units", "/measured/sweep", "/measured/sweepError", "/measured/radius", "/measured/radiusError", "/measured/fromFold", "/measured/toFold", "/measured/points",
        "/measured/pointError", "/corrections/step", "/corrections/maxSteps", "/corrections/direction", "/ends", "/panel/curve/sweep", "/panel/lever", "/panel/tolerance/angle",
        "/panel/tolerance/radius", "/panel/scatter/yield", "/panel/scatter/foldAngle", "/panel/springback/effectiveYield", "/panel/thickness", "/form/backing", "/stations",
    ];

    internal static readonly string[] EstimateExtras =
    [
        "/units", "/currency", "/pieces", "/pieces/0", "/rates", "/rates/labour", "/rates/formSheet/perMass", "/rates/formSheet/perSheet", "/rates/panelSheet/sheet",
        "/rates/panelSheet/perSheet", "/rates/form/layout/each", "/rates/form/cutting/fixed", "/rates/form/setUp", "/rates/panel/trimming/each", "/panel/trim",
        "/rates/overhead", "/rates/minimumCharge", "/rates/panelSheet/buy", "/rates/formSheet/scrapShare", "/rates/panel/setUp/each", "/rates/panel/rigging", "/rates/form/ribs",
        "/panel/mirrored", "/panel/stockSheets", "/counts/handlings", "/counts/stopChanges", "/counts/strips", "/counts/checks", "/counts/ribs", "/counts/trials",
        "/counts/people", "/counts/clamps", "/bumping/angle", "/bumping/pitch", "/bumping/hit", "/bumping/hour", "/rolling/setUp", "/rolling/perPanel", "/rolling/hour", "/learning/model", "/learning/rate",
        "/spread/form/low", "/spread/panel/high", "/spread/material/low", "/otherMethod/fixedCost", "/otherMethod/costPerPiece", "/otherMethod/minutesPerPiece", "/otherMethod/name",
    ];

    internal static readonly string[] ProgramExtras =
    [
        "/panel/leadOut", "/form/width", "/form/neutralFactor", "/form/stop/offset", "/form/stop/slope", "/form/stepping/folds", "/brake/kind", "/brake/dieOpening",
        "/brake/reach", "/brake/minFacet", "/brake/capacity/thickness", "/brake/stopResolution", "/brake/tools/clearance", "/brake/tools/plenty",
        "/brake/tools/leastLift", "/brake/tools/overTravel", "/brake/tools/openEnd", "/brake/tools/gauge/min", "/brake/tools/gauge/max", "/brake/tools/stopHeight",
        "/brake/tools/opening", "/brake/tools/beam", "/brake/tools/punch", "/brake/tools/minRun", "/brake/tools/minLand", "/brake/tools/lever",
        "/brake/tools/holder/width", "/brake/tools/ram/height", "/brake/tools/forceCapacity", "/stations", "/stations/0/angle", "/stations/1/facetAfter",
    ];

    [Fact]
    public Task No_spoilt_request_breaks_the_service() => SpoiltRequests(1);

    [Fact]
    public Task No_spoilt_prediction_breaks_the_service() => SpoiltPredictions(1);

    [Fact]
    public Task No_spoilt_program_breaks_the_service() => SpoiltPrograms(1);

    [Fact]
    public Task No_spoilt_strip_breaks_the_service() => SpoiltStrips(1);

    [Fact]
    public Task No_spoilt_measurement_breaks_the_service() => SpoiltMeasurements(1);

    [Fact]
    public Task No_spoilt_panel_breaks_the_service() => SpoiltPanels(1);

    [Fact]
    public Task No_spoilt_estimate_breaks_the_service() => SpoiltEstimates(1);

    [Fact]
    [Trait("Category", "Long")]
    public async Task None_of_thousands_of_spoilt_bodies_does()
    {
        await SpoiltRequests(10);
        await SpoiltPredictions(10);
        await SpoiltPrograms(10);
        await SpoiltStrips(10);
        await SpoiltMeasurements(10);
        await SpoiltPanels(10);
        await SpoiltEstimates(10);
    }

    [Fact]
    [Trait("Category", "Slow")]
    public async Task None_of_many_thousands_does()
    {
        await SpoiltRequests(40);
        await SpoiltPredictions(40);
        await SpoiltPrograms(30);
        await SpoiltStrips(40);
        await SpoiltMeasurements(40);
        await SpoiltPanels(40);
        await SpoiltEstimates(20);
    }

    private async Task SpoiltRequests(int tenths)
    {
        var seeds = Requests.Examples().Select(example => example.Body).Append(Requests.Arc()).ToArray();
        var tally = await Send(Drawn("computeForm", seeds, tenths * Rounds / 10, Extras), AssertWhole);
        AssertReached(tally, "computeForm", tenths * Rounds / 200);
    }

    private async Task SpoiltPredictions(int tenths)
    {
        var seeds = Requests.Predictions().Select(example => example.Body).Append(Requests.Standing()).ToArray();
        var wrapped = 0;
        await Send(Drawn("predictPanel", seeds, tenths * Rounds / 40, Extras), answer => Interlocked.Add(ref wrapped, AssertTold(answer) ? 1 : 0));
        output.WriteLine($"{wrapped} wrapped");
        Assert.True(wrapped > tenths * Rounds / 400, "Too few requests got through to the calculation.");
    }

    private async Task SpoiltPrograms(int tenths)
    {
        var seeds = Requests.Programs().Select(example => example.Body).Append(Requests.Program()).Append(Requests.Hoop()).ToArray();
        // A search that a busy machine cut short is a 503 and never half an answer; all else is the caller's.
        var tally = await Send(Drawn("programBrake", seeds, tenths * ProgramRounds / 10, ProgramExtras), AssertFoldable, mayBeCutShort: true);
        Assert.True(tally.GetValueOrDefault(("programBrake", 503)) <= tenths * ProgramRounds / 200, "Too many searches were cut short.");
        AssertReached(tally, "programBrake", tenths * ProgramRounds / 200);
    }

    private async Task SpoiltStrips(int tenths)
    {
        var seeds = Seeds(Requests.StripExamples());
        var tally = await Send(InTurn(seeds, tenths * StripRounds / 10, (seed, random) => Spoiling.Spoil(seed, random, StripExtras)), AssertLearnt);
        foreach (var (operation, _) in seeds)
            AssertReached(tally, operation, tenths * StripRounds / 500);
    }

    private async Task SpoiltMeasurements(int tenths)
    {
        var seeds = Seeds(Requests.AccuracyExamples());
        var tally = await Send(
            InTurn(seeds, tenths * StripRounds / 30, (seed, random) => Spoiling.Spoil(Spoiling.WithSpoiltLists(seed, random), random, AccuracyExtras)),
            AssertAccountedFor);
        foreach (var (operation, _) in seeds)
            AssertReached(tally, operation, tenths * StripRounds / 600);
    }

    private async Task SpoiltPanels(int tenths)
    {
        var seeds = Seeds(Requests.PanelExamples());
        var tally = await Send(
            InTurn(seeds, tenths * PanelRounds / 10, (seed, random) => Spoiling.Spoil(Spoiling.WithSpoiltLists(seed, random), random, PanelExtras)),
            AssertCorrected,
            mayBeCutShort: true);
        AssertReached(tally, "correctPanel", tenths * PanelRounds / 80);
        Assert.True(tally.GetValueOrDefault(("correctPanel", 503)) <= tenths * PanelRounds / 200, "Too many were cut short.");
    }

    private async Task SpoiltEstimates(int tenths)
    {
        JsonObject[] seeds = [.. Seeds(Requests.EstimateExamples()).Select(seed => seed.Body), Requests.Arc()];
        var tally = await Send(Drawn("estimateJob", seeds, tenths * EstimateRounds / 10, EstimateExtras), AssertBounded);
        AssertReached(tally, "estimateJob", tenths * EstimateRounds / 100);
    }

    private static (string Operation, JsonObject Body)[] Seeds(TheoryData<string, string> examples) =>
        [.. examples.Select(example => ((string)example[0], Requests.Example((string)example[0], (string)example[1])))];

    private static IEnumerable<(string Operation, byte[] Body)> Drawn(string operation, JsonObject[] seeds, int rounds, string[] extras)
    {
        var random = new Random(Seed);
        for (var round = 0; round < rounds; round++)
            yield return (operation, Spoiling.Spoil(Spoiling.MostlyQuick(seeds[random.Next(seeds.Length)], round), random, extras));
    }

    private static IEnumerable<(string Operation, byte[] Body)> InTurn(
        (string Operation, JsonObject Body)[] seeds, int rounds, Func<JsonObject, Random, byte[]> spoil)
    {
        var random = new Random(Seed);
        for (var round = 0; round < rounds; round++)
        {
            var (operation, body) = seeds[round % seeds.Length];
            yield return (operation, spoil(Spoiling.MostlyQuick(body, round / seeds.Length), random));
        }
    }

    // Sends all of them, as many at a time as there are processors; what comes out does not hang on the order.
    private async Task<SortedDictionary<(string Operation, int Status), int>> Send(
        IEnumerable<(string Operation, byte[] Body)> requests, Action<JsonElement> assertAnswer, bool mayBeCutShort = false)
    {
        var tally = new SortedDictionary<(string, int), int>();
        var sent = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount };
        await Parallel.ForEachAsync(requests.ToArray().Index(), sent, async (request, _) =>
        {
            var (round, (operation, body)) = request;
            using var response = await service.Post(Requests.PathOf(operation), body);
            var status = (int)response.StatusCode;
            var text = await response.Content.ReadAsStringAsync(CancellationToken.None);
            lock (tally)
                tally[(operation, status)] = tally.GetValueOrDefault((operation, status)) + 1;
            Assert.True(status is 200 or 400 or 422 || (mayBeCutShort && status == 503), $"{status} in round {round}: {text}\n{Encoding.UTF8.GetString(body)}");
            using var answer = JsonDocument.Parse(text);
            if (status == 200)
                assertAnswer(answer.RootElement);
            else if (status != 503)
                Assert.NotEmpty(answer.RootElement.GetProperty("errors").EnumerateArray());
        });
        output.WriteLine(string.Join(", ", tally.Select(entry => $"{entry.Key}: {entry.Value}")));
        return tally;
    }

    private static void AssertReached(SortedDictionary<(string Operation, int Status), int> tally, string operation, int least) =>
        Assert.True(tally.GetValueOrDefault((operation, 200)) > least, $"Too few requests of {operation} got through to the calculation.");

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
            Assert.True(check.GetProperty("verdict").GetString() != "fail" || check.GetProperty("remedy").GetProperty("text").GetString()!.Length > 0, check.GetRawText());
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
        Assert.Equal(!wraps, answer.GetProperty("text").ValueKind == JsonValueKind.String);
        // The face of a taper turns by less than its edges sweep.
        string[] turn = answer.GetProperty("ends").ValueKind == JsonValueKind.Object ? ["turn", "wantedTurn"] : ["sweep", "wantedSweep"];
        foreach (var field in (string[])[.. turn, "miss", "curve"])
            Assert.Equal(wraps, answer.GetProperty(field).ValueKind != JsonValueKind.Null);
        foreach (var field in new[] { "force", "clampMoment", "clampLoad", "endAngle", "energyReleased" })
            Assert.Equal(wraps, answer.GetProperty("pull").GetProperty(field).ValueKind == JsonValueKind.Number);
        var ripple = answer.GetProperty("ripple");
        Assert.Equal(ripple.GetProperty("known").GetBoolean(), ripple.GetProperty("height").ValueKind == JsonValueKind.Number);
        Assert.True(wraps || !ripple.GetProperty("known").GetBoolean());
        return wraps;
    }

    private static void AssertAccountedFor(JsonElement answer)
    {
        Assert.NotEmpty(answer.GetProperty("basis").EnumerateArray());
        if (answer.TryGetProperty("corrections", out var corrections))
        {
            Assert.Equal(corrections.GetProperty("found").GetBoolean(), corrections.GetProperty("closing").ValueKind == JsonValueKind.Number);
            Assert.True(!corrections.GetProperty("found").GetBoolean() || corrections.GetProperty("folds").GetArrayLength() == corrections.GetProperty("lowerBound").GetInt32());
            var panel = answer.GetProperty("panel");
            Assert.Equal(panel.GetProperty("text").ValueKind == JsonValueKind.String, panel.GetProperty("planned").ValueKind == JsonValueKind.Null);
            return;
        }

        var end = answer.GetProperty("end");
        var ellipse = end.GetProperty("ellipse");
        Assert.True(ellipse.GetProperty("semiMinor").GetDouble() <= ellipse.GetProperty("semiMajor").GetDouble());
        Assert.True(end.GetProperty("covariance").GetProperty("xx").GetDouble() >= 0);
        Assert.True(answer.GetProperty("closing").GetProperty("scatter").GetDouble() >= 0);
    }

    // What is said of the folds agrees, and nothing is pasted that is in doubt.
    private static void AssertCorrected(JsonElement answer)
    {
        Assert.NotEmpty(answer.GetProperty("basis").EnumerateArray());
        Assert.NotEmpty(answer.GetProperty("next").EnumerateArray());
        var folds = answer.GetProperty("folds").EnumerateArray().ToArray();
        Assert.Equal(folds.Count(fold => fold.GetProperty("steps").GetInt32() < 0), answer.GetProperty("opened").GetInt32());
        Assert.True(folds.Length >= answer.GetProperty("lowerBound").GetInt32() || !answer.GetProperty("meets").GetBoolean());
        Assert.All(folds, fold => Assert.Equal(
            answer.GetProperty("stations")[fold.GetProperty("fold").GetInt32() - 1].GetProperty("angle").GetDouble(), fold.GetProperty("angle").GetDouble()));
        Assert.Equal(answer.GetProperty("doubts").GetArrayLength() > 0, answer.GetProperty("paste").ValueKind == JsonValueKind.Null);
        var yield = answer.GetProperty("yield");
        Assert.True(yield.GetProperty("low").GetDouble() <= yield.GetProperty("value").GetDouble() && yield.GetProperty("value").GetDouble() <= yield.GetProperty("high").GetDouble());
    }

    // Every figure lies between its bounds.
    private static void AssertBounded(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in element.EnumerateArray())
                AssertBounded(item);
        }
        else if (element.ValueKind == JsonValueKind.Object)
        {
            if (element.TryGetProperty("likely", out var likely) && likely.ValueKind == JsonValueKind.Number)
            {
                Assert.True(element.GetProperty("low").GetDouble() <= likely.GetDouble(), element.GetRawText());
                Assert.True(element.GetProperty("high").GetDouble() >= likely.GetDouble(), element.GetRawText());
            }

            foreach (var field in element.EnumerateObject())
                AssertBounded(field.Value);
        }
    }

    // Every interval stands the right way round about its value.
    private static void AssertLearnt(JsonElement answer)
    {
        Assert.NotEmpty(answer.GetProperty("text").GetString()!);
        Assert.All(answer.GetProperty("next").EnumerateArray(), step => Assert.NotEmpty(step.GetProperty("text").GetString()!));
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
}
