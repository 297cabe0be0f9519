using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Many requests in one body: order, isolation, limits, a caller who is slow and one who goes.</summary>
public sealed class BatchesTests(Service service) : IClassFixture<Service>
{
    private static readonly string Arc = Line("form", Requests.Arc());

    [Fact]
    [Trait("Category", "Long")]
    public async Task Each_line_has_the_answer_of_its_post_in_its_order()
    {
        var asked = Requests.Examples().Select(example => (Operation: "form", Path: "/v1/forms", example.Body))
            .Concat(Requests.Predictions().Select(example => (Operation: "prediction", Path: "/v1/forms/prediction", example.Body)))
            .Concat(Requests.Programs().Select(example => (Operation: "program", Path: "/v1/programs", example.Body)))
            .ToArray();
        // Dear and cheap lines by turns: were they answered as they are done, they would come out of order.
        asked = [.. asked.Reverse().Concat(asked)];
        var answers = await Batch(asked.Select((line, i) => Line(line.Operation, line.Body, $"job {i}")));
        Assert.Equal(asked.Length, answers.Count);
        for (var i = 0; i < asked.Length; i++)
        {
            using var posted = await service.Post(asked[i].Path, asked[i].Body.ToJsonString());
            Assert.Equal($"{{\"line\":{i + 1},\"id\":\"job {i}\",\"status\":200,\"answer\":{await posted.Content.ReadAsStringAsync()}}}", answers[i]);
        }
    }

    public static TheoryData<string, int, string, string> BadLines() => new()
    {
        { "{\"id\":\"x\",\"operation\":\"form\",\"request\":", 400, "malformed-json", "" },
        { "\"form\"", 400, "wrong-type", "" },
        { "{\"id\":\"x\",\"operation\":\"form\"}", 400, "missing-field", "/request" },
        { "{\"id\":\"x\",\"operation\":\"forms\",\"request\":{}}", 400, "unknown-value", "/operation" },
        { "{\"id\":\"x\",\"operation\":\"form\",\"request\":null}", 400, "null-not-allowed", "/request" },
        { "{\"id\":\"x\",\"operation\":\"form\",\"request\":[]}", 400, "wrong-type", "/request" },
        { "{\"id\":[7],\"operation\":\"form\",\"request\":{}}", 400, "wrong-type", "/id" },
        { "{\"id\":\"x\",\"operation\":\"form\",\"request\":{},\"more\":1}", 400, "unknown-field", "/more" },
        { "{\"id\":\"x\",\"operation\":\"form\",\"operation\":\"form\",\"request\":{}}", 400, "duplicated-field", "/operation" },
        { "{\"id\":\"x\",\"operation\":\"form\",\"request\":{\"units\":\"mm\",\"units\":\"in\"}}", 400, "duplicated-field", "/request/units" },
        { "{\"id\":\"x\",\"operation\":\"form\",\"request\":{\"units\":\"mm\",\"pannel\":{}}}", 400, "unknown-field", "/request/pannel" },
        { Line("form", Requests.Arc().With("/panel/thickness", "-1"), "x"), 422, "invalid-values", "/request/panel/thickness" },
        { Line("program", Requests.Hoop(), "x"), 422, "program-impossible", "/request/stations/*" },
    };

    [Theory]
    [MemberData(nameof(BadLines))]
    public async Task A_bad_line_has_a_problem_in_its_place_and_spoils_no_other(string line, int status, string code, string place)
    {
        var answers = await Batch([Arc, line, "", Arc]);
        Assert.Equal(3, answers.Count);
        Assert.Equal(answers[0].Replace("\"line\":1", "\"line\":4", StringComparison.Ordinal), answers[2]);
        Assert.StartsWith("{\"line\":1,\"id\":null,\"status\":200,\"answer\":{", answers[0], StringComparison.Ordinal);
        var answer = JsonNode.Parse(answers[1])!;
        Assert.Equal(2, (int)answer["line"]!);
        Assert.Equal(status, (int)answer["status"]!);
        Assert.Null(answer["answer"]);
        var problem = answer["problem"]!;
        Assert.Equal(code, (string)problem["code"]!);
        Assert.Equal("/v1/batches", (string)problem["instance"]!);
        var found = (string)problem["errors"]![0]!["pointer"]!;
        Assert.True(place.EndsWith('*') ? found.StartsWith(place[..^1], StringComparison.Ordinal) : found == place, found);
        if (code is not "malformed-json" && line.Contains("\"id\":\"x\"", StringComparison.Ordinal))
            Assert.Equal("x", (string)answer["id"]!);
    }

    [Theory]
    [InlineData("7")]
    [InlineData("1.50")]
    [InlineData("\"a \\u00e9 b\"")]
    public async Task A_line_is_named_by_text_or_by_a_number_and_given_it_back_as_it_came(string id)
    {
        var line = $"{{\"id\":{id},\"operation\":\"form\",\"request\":{Requests.Arc().ToJsonString()}}}";
        var answers = await Batch([line, line.Replace("\"form\"", "\"fold\"", StringComparison.Ordinal)]);
        Assert.StartsWith($"{{\"line\":1,\"id\":{id},\"status\":200,", answers[0], StringComparison.Ordinal);
        Assert.StartsWith($"{{\"line\":2,\"id\":{id},\"status\":400,", answers[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Answers_are_compressed_for_whoever_asks_and_lines_may_come_compressed(string encoding)
    {
        var plain = await Batch([Arc, Arc]);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/batches")
        {
            Content = Packing.Of(string.Join('\n', Arc, Arc), encoding, "application/x-ndjson"),
        };
        request.Headers.AcceptEncoding.ParseAdd(encoding);
        using var response = await service.Client.SendAsync(request);
        Assert.Equal([encoding], response.Content.Headers.ContentEncoding);
        var unpacked = await Packing.Unpack(response.Content, encoding);
        Assert.Equal(plain, unpacked.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public async Task Lines_may_end_in_any_way_and_the_last_in_none()
    {
        using var response = await service.Post("/v1/batches", Encoding.UTF8.GetBytes($"{Arc}\r\n\r\n  \n{Arc}"), "application/x-ndjson");
        Assert.Equal("application/x-ndjson", response.Content.Headers.ContentType!.ToString());
        var answers = (await response.Content.ReadAsStringAsync()).Split('\n');
        Assert.Equal(3, answers.Length);
        Assert.StartsWith("{\"line\":4,", answers[1], StringComparison.Ordinal);
        Assert.Empty(answers[2]);
    }

    [Fact]
    public async Task The_committed_batch_is_answered_line_by_line()
    {
        var lines = await File.ReadAllLinesAsync(Repository.PathOf("openapi", "requests", "batch.ndjson"));
        var answers = await Batch(lines);
        Assert.Equal([200, 200, 400], answers.Select(StatusOf));
    }

    [Fact]
    public async Task No_lines_have_no_answers()
    {
        using var response = await service.Post("/v1/batches", [], "application/x-ndjson");
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Empty(await response.Content.ReadAsByteArrayAsync());
    }

    [Theory]
    [InlineData("application/json")]
    [InlineData("text/plain")]
    [InlineData("application/x-ndjson; charset=utf-16")]
    public async Task Another_media_type_is_refused(string media)
    {
        using var response = await service.Post("/v1/batches", Encoding.UTF8.GetBytes(Arc), media);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, response.StatusCode);
        Assert.Contains("x-ndjson", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_that_is_too_long_is_refused_and_the_next_is_read()
    {
        using var host = Service.With(("Limits:BatchLineBytes", "2048"));
        var answers = await Batch([Arc, new string('x', 500_000), Arc, "{\"id\":\"" + new string('y', 2048) + "\"}", Arc], host);
        Assert.Equal([200, 413, 200, 413, 200], answers.Select(StatusOf));
        Assert.Contains("Limits:BatchLineBytes", answers[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_batch_that_is_too_long_ends_with_the_limit_and_the_setting_that_raises_it()
    {
        using var host = Service.With(("Limits:BatchLines", "3"));
        Assert.Equal([200, 200, 200], (await Batch(Enumerable.Repeat(Arc, 3), host)).Select(StatusOf));
        var answers = await Batch(Enumerable.Repeat(Arc, 5), host);
        Assert.Equal([200, 200, 200, 413], answers.Select(StatusOf));
        Assert.Contains("Limits:BatchLines", answers[3], StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_line_that_takes_too_long_is_told_so_and_the_others_go_on()
    {
        // Far from both on any machine: a fit that tries everything, and an arc.
        using var host = Service.With(("Limits:Seconds", "0.1"));
        var slow = Requests.Arc().With("/panel/curve", Rough(2000));
        var quick = Enumerable.Repeat(Arc, 20).ToArray();
        await Batch(quick, host);
        string[] slowOnes = [.. Enumerable.Repeat(Line("form", slow), 3)];
        var answers = await Batch([.. quick, .. slowOnes, .. quick], host);
        Assert.Equal(43, answers.Count);
        Assert.All(answers.Skip(20).Take(3), answer =>
        {
            Assert.Equal(503, StatusOf(answer));
            Assert.Contains("Limits:Seconds", answer, StringComparison.Ordinal);
        });
        Assert.Contains(200, answers.Skip(23).Select(StatusOf));
    }

    [Fact]
    public async Task Answers_come_while_the_rest_is_still_being_sent()
    {
        var release = new SemaphoreSlim(0);
        async IAsyncEnumerable<string> Lines()
        {
            yield return Arc;
            await release.WaitAsync();
            yield return Arc;
        }

        using var content = new LineContent(Lines());
        using var response = await Send(content, service);
        using var reader = new StreamReader(await response.Content.ReadAsStreamAsync());
        Assert.Equal(200, StatusOf((await reader.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(30)))!));
        release.Release();
        Assert.Equal(200, StatusOf((await reader.ReadLineAsync())!));
        Assert.Null(await reader.ReadLineAsync());
    }

    [Fact]
    public async Task A_caller_who_reads_nothing_holds_the_lines_back_and_is_dropped()
    {
        using var host = Service.With(("Limits:UnreadSeconds", "1"), ("Limits:Batches", "1"));
        using var content = new LineContent(Enumerable.Repeat(Arc, 100_000));
        using var response = await Send(content, host);
        var started = DateTime.UtcNow;
        // Nothing is read until the service has let go of its only place for batches.
        while (await StatusOfSmallBatch(host) == 429 && DateTime.UtcNow - started < TimeSpan.FromSeconds(60))
            await Task.Delay(100);
        Assert.Equal(200, await StatusOfSmallBatch(host));
        Assert.InRange(content.Sent, 1, 2_000_000);
        await Assert.ThrowsAnyAsync<Exception>(async () => await response.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_caller_who_hangs_up_ends_the_work()
    {
        using var host = Service.With(("Limits:Batches", "1"));
        using var leaving = new CancellationTokenSource();
        var program = Line("program", Requests.Example("programBrake", "counter-corner-leaf"));
        using var content = new LineContent(Enumerable.Repeat(program, 50_000));
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/batches") { Content = content };
        var response = await host.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, leaving.Token);
        var stream = await response.Content.ReadAsStreamAsync(leaving.Token);
        Assert.NotEqual(0, await stream.ReadAsync(new byte[1024], leaving.Token));
        Assert.Equal(429, await StatusOfSmallBatch(host));
        response.Dispose();
        await leaving.CancelAsync();
        var started = DateTime.UtcNow;
        while (await StatusOfSmallBatch(host) == 429 && DateTime.UtcNow - started < TimeSpan.FromSeconds(20))
            await Task.Delay(50);
        Assert.Equal(200, await StatusOfSmallBatch(host));
        Assert.InRange(content.Sent, 1, 1_000_000);
    }

    [Fact]
    public async Task A_batch_may_begin_with_a_byte_order_mark()
    {
        var answers = await Batch(["\uFEFF" + Arc, Arc]);
        Assert.Equal([200, 200], answers.Select(StatusOf));
    }

    // Points that no curve passes within the tolerance, however many knots it has.
    private static string Rough(int count)
    {
        var random = new Random(3);
        var points = Enumerable.Range(0, count).Select(i =>
        {
            var (angle, radius) = (Math.PI / 2 * i / (count - 1), 120 + (0.06 * (random.NextDouble() - 0.5)));
            return new JsonArray(radius * Math.Sin(angle), 120 - (radius * Math.Cos(angle)));
        });
        return new JsonObject { ["type"] = "points", ["points"] = new JsonArray([.. points]), ["tolerance"] = 0.02 }.ToJsonString();
    }

    private static async Task<int> StatusOfSmallBatch(Service host)
    {
        using var response = await host.Post("/v1/batches", Encoding.UTF8.GetBytes(Arc), "application/x-ndjson");
        return (int)response.StatusCode;
    }

    internal static string Line(string operation, JsonObject request, string? id = null)
    {
        var line = new JsonObject { ["operation"] = operation, ["request"] = request.DeepClone() };
        if (id is not null)
            line.Insert(0, "id", id);
        return line.ToJsonString();
    }

    private static int StatusOf(string answer) => JsonDocument.Parse(answer).RootElement.GetProperty("status").GetInt32();

    internal static Task<HttpResponseMessage> Send(LineContent content, Service host) =>
        host.Client.SendAsync(new(HttpMethod.Post, "/v1/batches") { Content = content }, HttpCompletionOption.ResponseHeadersRead);

    private Task<List<string>> Batch(IEnumerable<string> lines) => Batch(lines, service);

    private static async Task<List<string>> Batch(IEnumerable<string> lines, Service host)
    {
        using var content = new LineContent(lines);
        using var response = await Send(content, host);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        using var reader = new StreamReader(await response.Content.ReadAsStreamAsync());
        var answers = new List<string>();
        while (await reader.ReadLineAsync() is { } line)
            answers.Add(line);
        return answers;
    }
}
