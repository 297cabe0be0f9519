using System.Net;
using System.Text.Json.Nodes;
using FormApi.Features.Verification;
using Forming.Plans;
using Forming.Verification;

namespace FormApi.Tests;

/// <summary>The running engine against its published values, and what becomes of the service when one does not come out.</summary>
public sealed class VerificationTests(Service service) : IClassFixture<Service>
{
    private const string Altered = "air-bending-forces.2.force";

    [Fact]
    public async Task Every_published_value_comes_out()
    {
        var answer = await Get(service, "/v1/verification");
        Assert.Equal("pass", (string?)answer["verdict"]);
        Assert.Empty(answer["failed"]!.AsArray());
        var values = answer["values"]!.AsArray();
        Assert.Equal(values.Count, (int)answer["checked"]!);
        Assert.True(values.Count >= 600, $"{values.Count} values");
        Assert.Equal(values.Count, answer["tables"]!.AsArray().Sum(table => (int)table!["checked"]!));
        foreach (var value in values)
        {
            Assert.Equal("pass", (string?)value!["verdict"]);
            var (expected, got, tolerance) = ((double)value["expected"]!, (double)value["got"]!, (double)value["tolerance"]!);
            Assert.InRange(Math.Abs((double)value["difference"]!), 0, 1.005 * tolerance);
            // Twelve digits of what the engine got.
            Assert.InRange(Math.Abs(got - expected), 0, (1.00001 * tolerance) + (1e-11 * Math.Abs(expected)));
        }
    }

    [Fact]
    public async Task Every_value_belongs_to_a_table_and_cites_a_source_that_is_listed()
    {
        var keys = (await Get(service, "/v1/references"))["references"]!.AsArray().Select(source => (string)source!["key"]!).ToHashSet();
        var answer = await Get(service, "/v1/verification");
        var tables = answer["tables"]!.AsArray().Select(table => (string)table!["id"]!).ToHashSet();
        Assert.All(answer["values"]!.AsArray(), value =>
        {
            Assert.Contains((string)value!["source"]!, keys);
            Assert.Contains(((string)value["id"]!).Split('.')[0], tables);
        });
        Assert.All(answer["tables"]!.AsArray().SelectMany(table => table!["sources"]!.AsArray()), key => Assert.Contains((string)key!, keys));
    }

    [Fact]
    public async Task One_table_is_as_it_stands_among_all()
    {
        var all = await Get(service, "/v1/verification");
        var one = await Get(service, "/v1/verification?table=clothoid-a100");
        Assert.Equal(16, one["values"]!.AsArray().Count);
        var among = all["values"]!.AsArray().Where(value => ((string)value!["id"]!).StartsWith("clothoid-a100.", StringComparison.Ordinal));
        Assert.Equal(among.Select(value => value!.ToJsonString()), one["values"]!.AsArray().Select(value => value!.ToJsonString()));
        Assert.True(JsonNode.DeepEquals(all["tables"], one["tables"]));
        Assert.Equal((int)all["checked"]!, (int)one["checked"]!);
    }

    [Fact]
    public async Task Untouched_tables_make_the_service_ready()
    {
        using var same = Service.With(Tables(value => value));
        var ready = await Get(same, "/health/ready");
        Assert.Equal("ready", (string?)ready["status"]);
        Assert.True((int)ready["checked"]! >= 600);
        Assert.Empty(ready["failed"]!.AsArray());
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public async Task One_value_that_does_not_come_out_makes_the_service_unready_and_is_named(string fault)
    {
        using var broken = Service.With(Tables(value => Break(value, fault)));
        using var ready = await broken.Client.GetAsync("/health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        var health = JsonNode.Parse(await ready.Content.ReadAsStringAsync())!;
        Assert.Equal("not-ready", (string?)health["status"]);
        Assert.Equal([Altered], health["failed"]!.AsArray().Select(id => (string?)id));

        var answer = await Get(broken, "/v1/verification");
        Assert.Equal("fail", (string?)answer["verdict"]);
        Assert.Equal([Altered], answer["failed"]!.AsArray().Select(id => (string?)id));
        var failed = answer["values"]!.AsArray().Where(value => (string?)value!["verdict"] == "fail").Select(value => (string?)value!["id"]);
        Assert.Equal([Altered], failed);
        var table = Assert.Single(answer["tables"]!.AsArray(), table => (int)table!["passed"]! < (int)table["checked"]!);
        Assert.Equal("air-bending-forces", (string?)table!["id"]);
    }

    public static TheoryData<string> Faults => ["expected", "expected-NaN", "tolerance-sign", "tolerance-NaN", "tolerance-endless", "got-NaN", "throws"];

    [Fact]
    public async Task An_engine_held_against_nothing_is_not_ready()
    {
        using var empty = Service.With(Array.Empty<CheckTable>());
        using var ready = await empty.Client.GetAsync("/health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        // A process that started anew would be as wrong.
        foreach (var path in (string[])["/health/live", "/health/startup"])
        {
            using var well = await empty.Client.GetAsync(path);
            Assert.Equal(HttpStatusCode.OK, well.StatusCode);
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_known_plan_that_throws_or_comes_out_as_another_makes_the_service_unready(bool throws)
    {
        using var broken = Service.Planning(() => throws ? throw new NotFiniteNumberException() : Other());
        using var ready = await broken.Client.GetAsync("/health/ready");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        var health = JsonNode.Parse(await ready.Content.ReadAsStringAsync())!;
        Assert.Equal(["known-plan"], health["failed"]!.AsArray().Select(id => (string?)id));

        static FormPlan Other()
        {
            var plan = KnownPlan.QuarterTurn();
            return plan with { Panel = plan.Panel with { Blank = plan.Panel.Blank with { LengthMm = plan.Panel.Blank.LengthMm + 0.001 } } };
        }
    }

    [Fact]
    public async Task The_report_is_named_by_what_came_out_and_nobody_between_keeps_it()
    {
        using var passed = await service.Client.GetAsync("/v1/verification");
        Assert.Equal("application/json", passed.Content.Headers.ContentType!.MediaType);
        Assert.True(passed.Headers.CacheControl!.NoCache);
        Assert.Null(passed.Headers.CacheControl.MaxAge);
        using var one = await service.Client.GetAsync("/v1/verification?table=clothoid-a100");
        Assert.NotEqual(passed.Headers.ETag, one.Headers.ETag);

        using var known = await Ask(service, passed);
        Assert.Equal(HttpStatusCode.NotModified, known.StatusCode);
        Assert.True(known.Headers.CacheControl!.NoCache);
        Assert.Empty(await known.Content.ReadAsByteArrayAsync());

        // A process that went wrong is not taken for the one that was right.
        using var broken = Service.With(Tables(value => Break(value, "expected")));
        using var failed = await Ask(broken, passed);
        Assert.Equal(HttpStatusCode.OK, failed.StatusCode);
        Assert.True(failed.Headers.CacheControl!.NoCache);
        Assert.NotEqual(passed.Headers.ETag, failed.Headers.ETag);
        Assert.Equal("fail", (string?)JsonNode.Parse(await failed.Content.ReadAsStringAsync())!["verdict"]);

        static async Task<HttpResponseMessage> Ask(Service service, HttpResponseMessage had)
        {
            using var again = new HttpRequestMessage(HttpMethod.Get, "/v1/verification");
            again.Headers.IfNoneMatch.Add(had.Headers.ETag!);
            return await service.Client.SendAsync(again);
        }
    }

    // The value at fault is off by a tenth more than its tolerance, or cannot be compared at all.
    private static CheckValue Break(CheckValue value, string fault) => value.Id != Altered ? value : fault switch
    {
        "expected" => value with { Expected = value.Compute() + (1.1 * value.Tolerance) },
        "expected-NaN" => value with { Expected = double.NaN },
        "tolerance-sign" => value with { Tolerance = -value.Tolerance },
        "tolerance-NaN" => value with { Tolerance = double.NaN },
        "tolerance-endless" => value with { Tolerance = double.PositiveInfinity },
        "got-NaN" => value with { Compute = () => double.NaN },
        "throws" => value with { Compute = () => throw new NotFiniteNumberException() },
        _ => throw new ArgumentException(fault),
    };

    private static CheckTable[] Tables(Func<CheckValue, CheckValue> change) =>
        [.. CheckTables.All.Select(table => table with { Values = [.. table.Values.Select(change)] })];

    private static async Task<JsonNode> Get(Service service, string path) => JsonNode.Parse(await service.Client.GetStringAsync(path))!;
}
