using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using FormApi.Features.Forms;
using FormApi.Http.Requests;
using Forming.Plans;
using Forming.Results;
using Xunit.Abstractions;

namespace FormApi.Tests;

/// <summary>A remedy is a change that cures: every one is applied to the request that the answer shows, and sent again.</summary>
public sealed class RemediesTests(RemediesTests.PatientService patient, ITestOutputHelper output) : IClassFixture<RemediesTests.PatientService>
{
    private const int Seed = 20261126;

    // Of the remedies that are offered; what fails is cured always.
    private const double LeastCured = 0.95;
    private const double LeastOfferedToQuickPlans = 0.80;

    // A solve costs a thousand quick plans, so that few changes are tried; fifteen jobs have 87 of 113.
    private const double LeastOfferedToSolvedPlans = 0.70;

    private readonly Service _service = patient.Service;

    [Fact]
    [Trait("Category", "Long")]
    public Task Remedies_of_random_quick_jobs_cure() => RemediesCure(Seed, 40, "pure-bending", LeastOfferedToQuickPlans);

    [Fact]
    [Trait("Category", "Long")]
    public Task Remedies_of_random_jobs_cure() => RemediesCure(Seed, 3, "wrap", LeastOfferedToSolvedPlans);

    [Fact]
    [Trait("Category", "Slow")]
    public Task Remedies_of_fifteen_random_jobs_cure() => RemediesCure(Seed, 15, "wrap", LeastOfferedToSolvedPlans);

    [Fact]
    [Trait("Category", "Slow")]
    public Task Remedies_of_five_hundred_random_jobs_cure() => RemediesCure(Seed + 1, 500, "pure-bending", LeastOfferedToQuickPlans);

    [Theory]
    [InlineData("mm", 1.0)]
    [InlineData("in", 25.4)]
    public async Task A_form_wider_than_the_brake_needs_a_brake_that_is_as_wide_in_the_callers_units(string units, double unitMm)
    {
        var request = InUnits(units, unitMm).With("/brake/length", (400 / unitMm).ToString(CultureInfo.InvariantCulture));
        var answer = await _service.Form(request);
        var change = RemedyOf(answer, "brake-length")["changes"]!.AsArray().Single()!;
        Assert.Equal("/brake/length", (string?)change["pointer"]);
        Assert.InRange((double)change["value"]! * unitMm, 600, 612);
    }

    [Fact]
    public async Task A_form_that_gives_is_ribbed()
    {
        var soft = Requests.Arc().With("/form/thickness", "1").With("/form/foldRadius", "1").With("/panel/springback", """{"model":"pure-bending"}""");
        var answer = await _service.Form(soft);
        Assert.Equal("warn", VerdictOf(answer, "form-give"));
        Assert.Equal("/form/backing", (string?)RemedyOf(answer, "form-give")["changes"]![0]!["pointer"]);
        var ribbed = await _service.Form(soft.With("/form/backing", "\"ribs\""));
        Assert.Equal("pass", VerdictOf(ribbed, "form-give"));
        Assert.Equal("pass", VerdictOf(ribbed, "form-yield"));
        Assert.Equal(answer["form"]!["give"]!.ToJsonString(), ribbed["form"]!["give"]!.ToJsonString());
    }

    [Fact]
    public async Task Two_people_pull_twice_what_one_does_and_level_twice_the_width()
    {
        var one = await _service.Form(Requests.Arc());
        var two = await _service.Form(Requests.Arc().With("/panel/pull", """{"by":{"people":2}}"""));
        foreach (var id in (string[])["hand-force", "panel-width", "lift-mass"])
            Assert.Equal(2 * (double)CheckOf(one, id)["limit"]!, (double)CheckOf(two, id)["limit"]!, 9);
        var winch = await _service.Form(Requests.Arc().With("/panel/pull", """{"by":{"rated":5000}}"""));
        Assert.Equal(5000, (double)CheckOf(winch, "hand-force")["limit"]!);
        Assert.Equal("""{"by":{"rated":5000}}""", winch["request"]!["panel"]!["pull"]!.ToJsonString());
        Assert.Equal("""{"by":{"people":1}}""", one["request"]!["panel"]!["pull"]!.ToJsonString());
    }

    [Theory]
    [InlineData("""{"by":{"people":7}}""", "/panel/pull/by/people", "out-of-range")]
    [InlineData("""{"by":{"people":0}}""", "/panel/pull/by/people", "out-of-range")]
    [InlineData("""{"by":{"people":2,"rated":900}}""", "/panel/pull/by/rated", "choose-one")]
    public async Task Seven_people_are_no_crew_and_a_winch_is_not_people(string pull, string at, string code)
    {
        using var response = await _service.Post("/v1/forms", Requests.Arc().With("/panel/pull", pull).ToJsonString());
        Assert.Equal(422, (int)response.StatusCode);
        var fault = JsonNode.Parse(await response.Content.ReadAsStringAsync())!["errors"]!.AsArray().Single()!;
        Assert.Equal((at, code), ((string)fault["pointer"]!, (string)fault["code"]!));
    }

    [Fact]
    public async Task A_winch_is_named_where_a_crew_is_too_small()
    {
        var heavy = Requests.Arc().With("/panel/thickness", "6").With("/panel/leadOut", "60").With("/panel/width", "3000").With("/brake/length", "3100");
        var answer = await _service.Form(heavy);
        var change = RemedyOf(answer, "hand-force")["changes"]!.AsArray().Single()!;
        Assert.Equal("/panel/pull/by", (string?)change["pointer"]);
        Assert.True((double)change["value"]!["rated"]! >= (double)CheckOf(answer, "hand-force")["value"]!);
    }

    [Fact]
    public async Task The_pull_of_a_prediction_names_enough_people()
    {
        var answer = await _service.Prediction(Requests.Arc().With("/panel/width", "1200"));
        Assert.Equal("warn", VerdictOf(answer, "hand-force"));
        var again = await _service.Prediction(Applied(answer["request"]!.AsObject(), RemedyOf(answer, "hand-force")));
        Assert.Equal("pass", VerdictOf(again, "hand-force"));
    }

    private async Task RemediesCure(int seed, int jobs, string model, double leastOffered)
    {
        var requests = new RandomRequests(seed, await Materials());
        var rates = new SortedDictionary<string, (int NotPassed, int Offered, int Cured)>(StringComparer.Ordinal);
        var missed = new List<string>();
        int notPassed = 0, offered = 0, cured = 0;
        for (var done = 0; done < jobs;)
        {
            if (await TryForm(requests.Next().With("/panel/springback", $"{{\"model\":\"{model}\"}}")) is not { } answer)
                continue;
            done++;
            var before = Verdicts(answer);
            // What is not known is not mended by a change: a pull is asked for, or a strip bent.
            foreach (var check in answer["checks"]!.AsArray().Where(check => (string?)check!["verdict"] != "pass" && (string?)check["id"] is not ("outcome" or "outlook")))
            {
                var (id, remedy) = ((string)check!["id"]!, check["remedy"]!.AsObject());
                var isOffered = remedy["changes"]!.AsArray().Count > 0;
                var isCured = isOffered && Again(Applied(answer["request"]!.AsObject(), remedy)) is { } again && IsCured(id, before, again);
                var rate = rates.GetValueOrDefault(id);
                rates[id] = (rate.NotPassed + 1, rate.Offered + (isOffered ? 1 : 0), rate.Cured + (isCured ? 1 : 0));
                (notPassed, offered, cured) = (notPassed + 1, offered + (isOffered ? 1 : 0), cured + (isCured ? 1 : 0));
                if (isOffered && !isCured && (string?)check["verdict"] == "fail")
                    missed.Add(remedy.ToJsonString() + " of " + answer["request"]!.ToJsonString());
                Assert.NotEmpty((string)remedy["text"]!);
            }
        }

        foreach (var (id, rate) in rates)
            output.WriteLine($"{id}: {rate.NotPassed} did not pass, {rate.Offered} remedies, {rate.Cured} cure");
        output.WriteLine($"all: {notPassed} did not pass, {offered} remedies, {cured} cure");
        Assert.Empty(missed);
        Assert.True(cured >= LeastCured * offered, $"{cured} of {offered} remedies cure");
        Assert.True(offered >= leastOffered * notPassed, $"{offered} of {notPassed} checks carry a remedy");
    }

    // Planned as the service plans it, but without looking for remedies once more.
    private static Dictionary<string, int>? Again(JsonObject request)
    {
        var body = JsonBody<FormRequest>.Of(Encoding.UTF8.GetBytes(request.ToJsonString()));
        if (body.Problem is not null)
            return null;
        try
        {
            return FormPlan.Compute(FormSpecs.From(FormDefaults.Apply(body.Value)).Job, _ => false).Checks
                .GroupBy(check => check.Id, StringComparer.Ordinal)
                .ToDictionary(group => group.Key, group => (int)group.Max(check => check.Verdict), StringComparer.Ordinal);
        }
        catch (NoSolutionException)
        {
            return null;
        }
    }

    private static bool IsCured(string id, Dictionary<string, int> before, Dictionary<string, int> after) =>
        after.GetValueOrDefault(id) == 0 && after.All(now => now.Value <= before.GetValueOrDefault(now.Key) || IsNews(now.Key, before));

    // Where the pull was not followed, nothing was known of what comes off: what is known now has not got worse.
    private static bool IsNews(string id, Dictionary<string, int> before) =>
        id is "wrap-order" or "facets-show" or "finished-sweep" or "finished-radius" or "finished-shape" or "outlook"
        && !before.ContainsKey("finished-sweep")
        && (before.GetValueOrDefault("wrap-order") > 0 || before.ContainsKey("wrap-solver"));

    private static Dictionary<string, int> Verdicts(JsonNode answer) => answer["checks"]!.AsArray()
        .GroupBy(check => (string)check!["id"]!, StringComparer.Ordinal)
        .ToDictionary(group => group.Key, group => group.Max(check => Array.IndexOf(["pass", "warn", "fail"], (string)check!["verdict"]!)), StringComparer.Ordinal);

    private static JsonObject Applied(JsonObject request, JsonNode remedy)
    {
        foreach (var change in remedy["changes"]!.AsArray())
            request = SetAt(request, (string)change!["pointer"]!, change["value"]);
        return request;
    }

    private static JsonObject SetAt(JsonObject request, string pointer, JsonNode? value)
    {
        var copy = request.DeepClone().AsObject();
        var steps = pointer.Split('/')[1..];
        JsonNode here = copy;
        foreach (var step in steps[..^1])
            here = here is JsonArray items ? items[int.Parse(step, CultureInfo.InvariantCulture)]! : here[step]!;
        here.AsObject()[steps[^1]] = value?.DeepClone();
        return copy;
    }

    private async Task<JsonNode?> TryForm(JsonNode request)
    {
        using var response = await _service.Post("/v1/forms", request.ToJsonString());
        Assert.Contains((int)response.StatusCode, (int[])[200, 422]);
        return response.IsSuccessStatusCode ? JsonNode.Parse(await response.Content.ReadAsStringAsync()) : null;
    }

    private async Task<IReadOnlyList<(string Id, string? GaugeSystem)>> Materials()
    {
        var table = JsonNode.Parse(await _service.Client.GetStringAsync("/v1/materials"))!;
        return [.. table["materials"]!.AsArray().Select(row => ((string)row!["id"]!, (string?)row["gaugeSystem"]))];
    }

    private static JsonObject InUnits(string units, double unitMm) => units == "mm"
        ? Requests.Arc()
        : JsonNode.Parse(FormattableString.Invariant($$"""
            {
              "units": "in",
              "panel": {
                "material": { "id": "ss-304" }, "thickness": {{1.2 / unitMm}}, "width": {{600 / unitMm}}, "leadIn": 3, "leadOut": 6,
                "curve": { "type": "arc", "radius": 3.5, "sweep": 90 }
              },
              "form": { "material": { "id": "steel-cr-cs" }, "thickness": 0.08, "foldRadius": 0.08, "leadIn": 2.5, "leadOut": 2.5 },
              "brake": { "length": 50 }
            }
            """))!.AsObject();

    private static JsonNode CheckOf(JsonNode answer, string id) => answer["checks"]!.AsArray().First(check => (string?)check!["id"] == id)!;

    private static string? VerdictOf(JsonNode answer, string id) => (string?)CheckOf(answer, id)["verdict"];

    private static JsonNode RemedyOf(JsonNode answer, string id) => CheckOf(answer, id)["remedy"]!;

    /// <summary>The service on a machine that may be busy: what cures does not depend on how long it took.</summary>
    public sealed class PatientService : IDisposable
    {
        public Service Service { get; } = Service.With(("Limits:Seconds", "300"));

        public void Dispose() => Service.Dispose();
    }
}
