using System.Text;

namespace FormApi.Tests;

/// <summary>Batches over a real connection: what a caller does to it, and what the server then makes of it.</summary>
public sealed class BatchSocketsTests
{
    private const string Head = "POST /v1/batches HTTP/1.1\r\nHost: here\r\nContent-Type: application/x-ndjson\r\n";

    private static readonly string Arc = BatchesTests.Line("form", Requests.Arc()) + "\n";

    [Fact]
    public async Task A_body_that_breaks_off_is_told_so_behind_what_came_before()
    {
        using var host = Service.OnPort();
        using var caller = await Caller.To(host);
        await caller.Send(Head + "Transfer-Encoding: chunked\r\n\r\n" + Chunk(Arc));
        Assert.Contains("{\"line\":1,\"id\":null,\"status\":200,", await caller.ReadTo("\n\r\n"), StringComparison.Ordinal);
        await caller.Send("no length\r\n");
        var last = await caller.ReadTo("0\r\n\r\n");
        Assert.Contains("{\"line\":2,\"id\":null,\"status\":400,", last, StringComparison.Ordinal);
        Assert.Contains("\"code\":\"bad-request\"", last, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_caller_who_falls_silent_is_told_so()
    {
        using var host = Service.OnPort(("Limits:UnsentSeconds", "1"));
        using var caller = await Caller.To(host);
        await caller.Send(Head + "Transfer-Encoding: chunked\r\n\r\n" + Chunk(Arc));
        var answers = await caller.ReadTo("0\r\n\r\n");
        Assert.Contains("{\"line\":1,\"id\":null,\"status\":200,", answers, StringComparison.Ordinal);
        Assert.Contains("{\"line\":2,\"id\":null,\"status\":400,", answers, StringComparison.Ordinal);
        Assert.Contains("Limits:UnsentSeconds", answers, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_caller_who_sends_all_and_closes_its_side_is_answered()
    {
        using var host = Service.OnPort();
        using (var caller = await Caller.To(host))
        {
            var body = string.Concat(Enumerable.Repeat(Arc, 20));
            await caller.Send($"{Head}Content-Length: {body.Length}\r\n\r\n{body}");
            caller.CloseOwnSide();
            var answers = await caller.ReadTo("0\r\n\r\n");
            Assert.Contains("{\"line\":20,\"id\":null,\"status\":200,", answers, StringComparison.Ordinal);
        }

        using var single = await Caller.To(host);
        var request = Requests.Arc().ToJsonString();
        await single.Send($"POST /v1/forms HTTP/1.1\r\nHost: here\r\nContent-Type: application/json\r\nContent-Length: {request.Length}\r\n\r\n{request}");
        single.CloseOwnSide();
        Assert.Contains("\"verdict\":", await single.ReadTo("0\r\n\r\n"), StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_caller_may_think_for_longer_than_the_server_waits_for_others()
    {
        using var host = Service.OnPort();
        using var caller = await Caller.To(host);
        await caller.Send(Head + "Transfer-Encoding: chunked\r\n\r\n" + Chunk(Arc));
        await caller.ReadTo("\n\r\n");
        // The server's own rate for bodies would have ended it after 5 s.
        await Task.Delay(TimeSpan.FromSeconds(7));
        await caller.Send(Chunk(Arc) + "0\r\n\r\n");
        Assert.Contains("{\"line\":2,\"id\":null,\"status\":200,", await caller.ReadTo("0\r\n\r\n"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_left_unread_of_a_batch_that_is_too_long_does_not_break_the_connection()
    {
        using var host = Service.OnPort(("Limits:BatchLines", "3"));
        using var caller = await Caller.To(host);
        var body = string.Concat(Enumerable.Repeat(Arc, 50));
        await caller.Send($"{Head}Content-Length: {body.Length}\r\n\r\n{body}");
        Assert.Contains("{\"line\":4,\"id\":null,\"status\":413,", await caller.ReadTo("0\r\n\r\n"), StringComparison.Ordinal);
        await caller.Send("GET /health/live HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n");
        Assert.Contains("HTTP/1.1 200 OK", await caller.ReadTo("the end of the connection"), StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task A_caller_who_reads_nothing_is_cut_off_and_its_place_given_to_another()
    {
        using var host = Service.OnPort(("Limits:UnreadSeconds", "1"), ("Limits:Batches", "1"), ("Limits:BatchLines", "10000000"));
        using var caller = await Caller.To(host);
        await caller.Send(Head + "Transfer-Encoding: chunked\r\n\r\n");
        var lines = string.Concat(Enumerable.Repeat(Chunk(Arc), 100));
        await Assert.ThrowsAsync<IOException>(async () =>
        {
            while (true)
                await caller.Send(lines);
        });
        var started = DateTime.UtcNow;
        while (true)
        {
            using var other = await host.Post("/v1/batches", Encoding.UTF8.GetBytes(Arc), "application/x-ndjson");
            if (other.IsSuccessStatusCode)
                break;
            Assert.Equal(429, (int)other.StatusCode);
            Assert.True(DateTime.UtcNow - started < TimeSpan.FromSeconds(20));
            await Task.Delay(50);
        }
    }

    private static string Chunk(string text) => $"{text.Length:x}\r\n{text}\r\n";
}
