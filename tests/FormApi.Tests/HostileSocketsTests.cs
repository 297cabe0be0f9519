using System.Text;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Callers over real connections who send slowly, break the rules of HTTP, or hang up: none stops another, none leaves a stack trace.</summary>
public sealed class HostileSocketsTests
{
    private const string Form = "POST /v1/forms HTTP/1.1\r\nHost: here\r\nContent-Type: application/json\r\n";
    private const string Batch = "POST /v1/batches HTTP/1.1\r\nHost: here\r\nContent-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n";
    private const string LastChunk = "0\r\n\r\n";
    private const string TheEnd = "the end of the connection";

    private static readonly string Arc = Requests.Arc().ToJsonString();

    private static readonly string Line = BatchesTests.Line("form", Requests.Arc()) + "\n";

    [Fact]
    public async Task Callers_who_send_byte_by_byte_stop_nobody()
    {
        using var host = Service.OnPort(("Limits:Concurrent", "2"), ("Limits:Queued", "0"));
        var callers = new List<Caller>();
        try
        {
            for (var i = 0; i < 8; i++)
            {
                callers.Add(await Caller.To(host));
                await callers[i].Send($"{Form}Content-Length: {Arc.Length}\r\n\r\n{Arc[..20]}");
            }

            using var other = await host.Post("/v1/forms", Arc);
            Assert.Equal(200, (int)other.StatusCode);
            await callers[0].Send(Arc[20..]);
            Assert.StartsWith("HTTP/1.1 200 OK", await callers[0].ReadTo(LastChunk), StringComparison.Ordinal);
        }
        finally
        {
            callers.ForEach(caller => caller.Dispose());
        }
    }

    [Fact]
    public async Task A_body_that_stops_half_way_is_told_so_and_leaves_no_trace()
    {
        var log = new LogLines();
        using var host = Service.OnPort(log, ("Limits:BodySeconds", "0.5"));
        using var caller = await Caller.To(host);
        await caller.Send($"{Form}Content-Length: {Arc.Length}\r\n\r\n{Arc[..20]}");
        AssertProblem(await caller.ReadTo(LastChunk), 408, "body-too-slow");
        log.AssertEmpty();
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_body_has_to_keep_up_a_rate()
    {
        var log = new LogLines();
        using var host = Service.OnPort(log, ("Limits:BodyBytesPerSecond", "1000000"));
        using var caller = await Caller.To(host);
        await caller.Send($"{Form}Transfer-Encoding: chunked\r\n\r\n");
        var answer = caller.ReadTo(LastChunk);
        for (var i = 0; !answer.IsCompleted && i < 200; i++)
        {
            await caller.Send(Chunk(Arc[i..(i + 1)]));
            await Task.WhenAny(answer, Task.Delay(100));
        }

        AssertProblem(await answer, 408, "body-too-slow");
        log.AssertEmpty();
    }

    [Fact]
    public async Task A_batch_that_falls_silent_leaves_no_trace()
    {
        var log = new LogLines();
        using var host = Service.OnPort(log, ("Limits:UnsentSeconds", "0.3"));
        using (var caller = await Caller.To(host))
        {
            await caller.Send(Batch + Chunk(Line + Line[..20]));
            Assert.Contains("Limits:UnsentSeconds", await caller.ReadTo(LastChunk), StringComparison.Ordinal);
        }

        await Task.Delay(300);
        log.AssertEmpty();
    }

    [Fact]
    public async Task A_caller_who_hangs_up_leaves_no_trace()
    {
        var log = new LogLines();
        using var host = Service.OnPort(log);
        using (var caller = await Caller.To(host))
            await caller.Send($"{Form}Content-Length: {Arc.Length}\r\n\r\n{Arc[..20]}");
        using (var caller = await Caller.To(host))
            await caller.Send(Batch + Chunk(Line[..20]));
        using (var caller = await Caller.To(host))
            await caller.Send($"{Form}Content-Length: {Arc.Length}\r\n\r\n{Arc}");
        using var after = await host.Post("/v1/forms", Arc);
        Assert.Equal(200, (int)after.StatusCode);
        await Task.Delay(300);
        log.AssertEmpty();
    }

    [Fact]
    public async Task A_chunk_larger_than_any_is_a_fault_of_the_request()
    {
        var log = new LogLines();
        using var host = Service.OnPort(log);
        foreach (var size in new[] { "FFFFFFFFFFFFFFFFF", "-1", "x" })
        {
            using var caller = await Caller.To(host);
            await caller.Send($"{Form}Connection: close\r\nTransfer-Encoding: chunked\r\n\r\n{size}\r\n{{}}\r\n");
            var answer = await caller.ReadTo(TheEnd);
            AssertProblem(answer, 400, "bad-request");
        }

        using (var caller = await Caller.To(host))
        {
            await caller.Send(Batch + Chunk(Line));
            Assert.Contains("{\"line\":1,\"id\":null,\"status\":200,", await caller.ReadTo("\n\r\n"), StringComparison.Ordinal);
            await caller.Send("FFFFFFFFFFFFFFFFF\r\n");
            Assert.Contains("{\"line\":2,\"id\":null,\"status\":400,", await caller.ReadTo(LastChunk), StringComparison.Ordinal);
        }

        log.AssertEmpty();
    }

    [Theory]
    [InlineData("GET /v1/forms%00 HTTP/1.1\r\nHost: here\r\n\r\n", 400, "bad-request")]
    [InlineData("GET /v1/links/%00/form HTTP/1.1\r\nHost: here\r\n\r\n", 400, "bad-request")]
    [InlineData("GET / HTTP/1.1\r\n\r\n", 400, "bad-request")]
    [InlineData("GET  /\r\n\r\n", 400, "bad-request")]
    public async Task What_the_server_refuses_unread_says_why(string request, int status, string code)
    {
        using var host = Service.OnPort();
        using var caller = await Caller.To(host);
        await caller.Send(request);
        AssertProblem(await caller.ReadTo(TheEnd), status, code);
    }

    [Fact]
    public async Task Headers_without_end_are_refused_with_a_problem()
    {
        using var host = Service.OnPort();
        using var caller = await Caller.To(host);
        await caller.Send("GET /v1/materials HTTP/1.1\r\nHost: here\r\nX: " + new string('x', 40_000));
        AssertProblem(await caller.ReadTo(TheEnd), 431, "bad-request");
    }

    [Fact]
    public async Task Batches_that_wait_for_their_callers_stop_nobody()
    {
        using var host = Service.OnPort(("Limits:Batches", "1"));
        var callers = new List<Caller>();
        try
        {
            for (var i = 0; i < 4; i++)
            {
                callers.Add(await Caller.To(host));
                // Two have sent a line and think, two have sent half of one.
                await callers[i].Send(Batch + Chunk(i < 2 ? Line : Line[..20]));
                if (i < 2)
                    Assert.Contains("{\"line\":1,\"id\":null,\"status\":200,", await callers[i].ReadTo("\n\r\n"), StringComparison.Ordinal);
            }

            using var other = await host.Post("/v1/batches", Encoding.UTF8.GetBytes(Line), "application/x-ndjson");
            Assert.Equal(200, (int)other.StatusCode);
            await callers[0].Send(Chunk(Line) + "0\r\n\r\n");
            Assert.Contains("{\"line\":2,\"id\":null,\"status\":200,", await callers[0].ReadTo(LastChunk), StringComparison.Ordinal);
            await callers[2].Send(Chunk(Line[20..]) + "0\r\n\r\n");
            Assert.Contains("{\"line\":1,\"id\":null,\"status\":200,", await callers[2].ReadTo(LastChunk), StringComparison.Ordinal);
        }
        finally
        {
            callers.ForEach(caller => caller.Dispose());
        }
    }

    private static void AssertProblem(string answer, int status, string code)
    {
        Assert.StartsWith($"HTTP/1.1 {status} ", answer, StringComparison.Ordinal);
        Assert.Contains("\r\nContent-Type: application/problem+json\r\n", answer, StringComparison.Ordinal);
        var problem = JsonNode.Parse(answer[answer.IndexOf('{', StringComparison.Ordinal)..(answer.LastIndexOf('}') + 1)])!;
        Assert.Equal(status, (int)problem["status"]!);
        Assert.Equal(code, (string?)problem["code"]);
        Assert.Equal(32, ((string)problem["traceId"]!).Length);
    }

    private static string Chunk(string text) => $"{text.Length:x}\r\n{text}\r\n";
}
