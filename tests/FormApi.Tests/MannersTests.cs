using System.Diagnostics;
using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using FormApi.Hosting;
using FormApi.Http.Problems;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace FormApi.Tests;

/// <summary>How the service behaves towards HTTP: tags, caching, encodings, media types, limits, traces.</summary>
public sealed class MannersTests(Service service) : IClassFixture<Service>
{
    private static readonly byte[] Arc = Encoding.UTF8.GetBytes(Requests.Arc().ToJsonString());

    [Fact]
    public async Task An_answer_is_tagged_with_its_fingerprint()
    {
        using var response = await service.Post("/v1/forms", Arc);
        var answer = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal($"\"{((string)answer["fingerprint"]!)[7..]}-json\"", response.Headers.ETag!.Tag);
        Assert.Equal(["Accept", "Accept-Encoding", "Prefer"], response.Headers.Vary);
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task A_compressed_answer_has_its_own_tag_and_the_same_content(string encoding)
    {
        using var plain = await service.Post("/v1/forms", Arc);
        using var request = Posting(Arc);
        request.Headers.AcceptEncoding.Add(new(encoding));
        using var response = await service.Client.SendAsync(request);
        Assert.Equal([encoding], response.Content.Headers.ContentEncoding);
        Assert.EndsWith($"-json-{encoding}\"", response.Headers.ETag!.Tag, StringComparison.Ordinal);
        await using var packed = await response.Content.ReadAsStreamAsync();
        await using Stream open = encoding == "br" ? new BrotliStream(packed, CompressionMode.Decompress) : new GZipStream(packed, CompressionMode.Decompress);
        using var reader = new StreamReader(open);
        Assert.Equal(await plain.Content.ReadAsStringAsync(), await reader.ReadToEndAsync());
    }

    [Theory]
    [InlineData("/v1/materials")]
    [InlineData("/v1/materials/ss-304?units=in")]
    [InlineData("/v1/gauges")]
    [InlineData("/v1/references")]
    [InlineData("/v1/verification")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/openapi/v1.yaml")]
    public async Task A_table_that_the_caller_has_is_not_sent_again(string path)
    {
        using var first = await service.Client.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        // What the running process finds of itself is asked for anew each time; a table holds for as long as the engine.
        Assert.Equal(path == "/v1/verification", first.Headers.CacheControl!.NoCache);
        Assert.Equal(path != "/v1/verification", first.Headers.CacheControl.Public);
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using var second = await service.Client.SendAsync(request);
        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
        Assert.Empty(await second.Content.ReadAsByteArrayAsync());
    }

    [Theory]
    [InlineData("text/csv", 406)]
    [InlineData("application/json;q=0", 406)]
    [InlineData("text/csv, application/json;q=0.1", 200)]
    [InlineData("application/*", 200)]
    [InlineData("*/*", 200)]
    [InlineData("nonsense", 200)]
    public async Task Media_types_are_negotiated(string accept, int status)
    {
        using var request = Posting(Arc);
        request.Headers.TryAddWithoutValidation("Accept", accept);
        using var response = await service.Client.SendAsync(request);
        Assert.Equal(status, (int)response.StatusCode);
        if (status == 406)
            Assert.Contains("application/json", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("text/plain", 415)]
    [InlineData("application/xml", 415)]
    [InlineData("application/json; charset=utf-16", 415)]
    [InlineData("application/json; charset=utf-8", 200)]
    [InlineData("application/json", 200)]
    public async Task Bodies_are_json_in_utf8(string mediaType, int status)
    {
        using var response = await service.Post("/v1/forms", Arc, mediaType);
        Assert.Equal(status, (int)response.StatusCode);
        if (status != 200)
            Assert.Equal("unsupported-media-type", await CodeOf(response));
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task A_body_may_come_compressed(string encoding)
    {
        using var content = Packing.Of(Encoding.UTF8.GetString(Arc), encoding, "application/json");
        using var response = await service.Client.PostAsync("/v1/forms", content);
        Assert.Equal(200, (int)response.StatusCode);
        Assert.Equal(await (await service.Post("/v1/forms", Arc)).Content.ReadAsStringAsync(), await response.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_compressed_body_is_held_to_the_limit_by_what_it_holds()
    {
        using var content = Packing.Of(Encoding.UTF8.GetString(Arc) + new string(' ', 20_000_000), "gzip", "application/json");
        Assert.True(content.Headers.ContentLength < 200_000);
        using var response = await service.Client.PostAsync("/v1/forms", content);
        Assert.Equal(413, (int)response.StatusCode);
        Assert.Equal("too-large", await CodeOf(response));
    }

    [Fact]
    public async Task An_unknown_compression_is_refused_with_those_that_are_known()
    {
        using var request = Posting(Arc);
        request.Content!.Headers.ContentEncoding.Add("compress");
        using var response = await service.Client.SendAsync(request);
        Assert.Equal(415, (int)response.StatusCode);
        Assert.Equal("gzip, br, deflate", response.Headers.GetValues("Accept-Encoding").Single());
    }

    [Fact]
    public async Task A_body_that_is_not_compressed_as_it_says_is_refused()
    {
        using var request = Posting(Arc);
        request.Content!.Headers.ContentEncoding.Add("gzip");
        using var response = await service.Client.SendAsync(request);
        Assert.Equal(400, (int)response.StatusCode);
        Assert.Equal("bad-request", await CodeOf(response));
    }

    [Theory]
    [InlineData("GET", "/nowhere", 404, "not-found")]
    [InlineData("GET", "/v1/forms", 405, "method-not-allowed")]
    [InlineData("DELETE", "/v1/materials", 405, "method-not-allowed")]
    [InlineData("GET", "/v1/materials/ss-305", 404, "not-found")]
    [InlineData("GET", "/v1/materials?units=ft", 400, "bad-request")]
    [InlineData("GET", "/v1/verification?table=none", 400, "bad-request")]
    [InlineData("GET", "/problems/none", 404, "not-found")]
    [InlineData("POST", "/v1/forms", 400, "empty-body")]
    public async Task Wrong_turns_are_problems(string method, string path, int status, string code)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        using var response = await service.Client.SendAsync(request);
        Assert.Equal(status, (int)response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        Assert.Equal(code, await CodeOf(response));
        if (status == 405)
            Assert.NotEmpty(response.Content.Headers.Allow);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_body_past_the_limit_is_refused_by_name(bool lengthKnown)
    {
        using var small = Service.With(("Limits:BodyBytes", "2048"));
        using var request = Posting([.. Arc, .. Enumerable.Repeat((byte)' ', 4096)]);
        request.Headers.TransferEncodingChunked = !lengthKnown;
        using var response = await small.Client.SendAsync(request);
        var text = await response.Content.ReadAsStringAsync();
        Assert.Equal(413, (int)response.StatusCode);
        Assert.Contains("2048", text, StringComparison.Ordinal);
        Assert.Contains("Limits:BodyBytes", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_many_at_once_are_told_when_to_come_back_and_health_still_answers()
    {
        using var narrow = Service.With(("Limits:Concurrent", "1"), ("Limits:Queued", "0"));
        using var other = Held(narrow);
        using var second = await narrow.Post("/v1/forms", Arc);
        Assert.Equal(429, (int)second.StatusCode);
        Assert.Equal("too-many-requests", await CodeOf(second));
        Assert.NotNull(second.Headers.RetryAfter);
        using var health = await narrow.Client.GetAsync("/health/live");
        Assert.Equal(200, (int)health.StatusCode);
        other.Finish();
        await other.Answer;
        using var third = await narrow.Post("/v1/forms", Arc);
        Assert.Equal(200, (int)third.StatusCode);
    }

    [Theory]
    [InlineData("Limits:Concurrent", "Limits:Queued")]
    [InlineData("Limits:CallerConcurrent", "Limits:CallerQueued")]
    public async Task Where_nobody_could_wait_any_more_a_call_is_sent_away_unread(string places, string queue)
    {
        using var narrow = Service.With((places, "1"), (queue, "0"));
        using var other = Held(narrow);
        using var slow = new SlowContent(Arc);
        using var sending = new HttpRequestMessage(HttpMethod.Post, "/v1/forms") { Content = slow };
        using var response = await narrow.Client.SendAsync(sending, HttpCompletionOption.ResponseHeadersRead);
        Assert.Equal(429, (int)response.StatusCode);
        Assert.Equal(queue.Replace(":", "__", StringComparison.Ordinal), (string?)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["limit"]);
        Assert.NotNull(response.Headers.RetryAfter);
        slow.Finish();
        other.Finish();
        await other.Answer;
    }

    [Fact]
    public async Task What_waits_too_long_for_its_turn_is_sent_away()
    {
        using var hasty = Service.With(("Limits:Seconds", "0.2"), ("Limits:Concurrent", "1"));
        using var other = Held(hasty);
        using var response = await hasty.Post("/v1/forms", Arc);
        Assert.Equal(503, (int)response.StatusCode);
        Assert.Equal("too-slow", await CodeOf(response));
        Assert.NotNull(response.Headers.RetryAfter);
        other.Finish();
        // It noticed its own deadline only now.
        Assert.IsType<ProblemResult>(await other.Answer);
    }

    [Fact]
    public async Task However_many_calculate_deadlines_are_kept_and_others_answered()
    {
        using var busy = Service.With(("Limits:Seconds", "0.5"), ("Limits:Concurrent", "100"));
        var started = Stopwatch.GetTimestamp();
        var calls = Enumerable.Range(0, 100).Select(_ => Call(busy, Stubborn)).ToArray();
        using var health = await busy.Client.GetAsync("/health/live");
        Assert.Equal(200, (int)health.StatusCode);
        foreach (var call in calls)
            Assert.Equal(ProblemKinds.TooSlow, Assert.IsType<ProblemResult>(await call).Kind);
        Assert.InRange(Stopwatch.GetElapsedTime(started).TotalSeconds, 0.4, 8);

        // A calculation that looks at its deadline only now and then.
        static ValueTask<object?> Stubborn(EndpointFilterInvocationContext call)
        {
            var cancellation = call.GetArgument<CancellationToken>(0);
            while (true)
            {
                Thread.SpinWait(10_000);
                cancellation.ThrowIfCancellationRequested();
            }
        }
    }

    // On a thread of the pool, where a server reads its requests.
    private static Task<object?> Call(Service service, EndpointFilterDelegate endpoint) => Task.Run(() => service.Services.GetRequiredService<Turns>()
        .CallAsync(EndpointFilterInvocationContext.Create(new DefaultHttpContext(), CancellationToken.None), endpoint).AsTask());

    private static HeldTurn Held(Service service) => new(endpoint => Call(service, endpoint));

    [Fact]
    public async Task A_sender_takes_no_place_from_those_who_calculate()
    {
        using var narrow = Service.With(("Limits:Concurrent", "1"), ("Limits:Queued", "0"));
        using var slow = new SlowContent(Arc);
        using var sending = new HttpRequestMessage(HttpMethod.Post, "/v1/forms") { Content = slow };
        var first = narrow.Client.SendAsync(sending);
        await slow.Started;
        using var second = await narrow.Post("/v1/forms", Arc);
        Assert.Equal(200, (int)second.StatusCode);
        slow.Finish();
        using var answered = await first;
        Assert.Equal(200, (int)answered.StatusCode);
    }

    [Fact]
    public async Task A_body_has_a_deadline_of_its_own()
    {
        using var hasty = Service.With(("Limits:BodySeconds", "0.3"), ("Limits:Seconds", "0.1"));
        using var slow = new SlowContent(Arc);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/forms") { Content = slow };
        using var response = await hasty.Client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead);
        Assert.Equal(408, (int)response.StatusCode);
        var text = await response.Content.ReadAsStringAsync();
        Assert.Equal("body-too-slow", (string?)JsonNode.Parse(text)!["code"]);
        Assert.Contains("Limits:BodySeconds", text, StringComparison.Ordinal);
        slow.Finish();
    }

    [Fact]
    public async Task A_traceparent_is_honoured()
    {
        using var request = Posting("{"u8.ToArray());
        request.Headers.Add("traceparent", "00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01");
        using var response = await service.Client.SendAsync(request);
        var problem = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal("0af7651916cd43dd8448eb211c80319c", (string?)problem["traceId"]);
    }

    [Theory]
    [InlineData("/health/live", "live")]
    [InlineData("/health/startup", "started")]
    [InlineData("/health/ready", "ready")]
    public async Task Health_is_told(string path, string status)
    {
        var health = JsonNode.Parse(await service.Client.GetStringAsync(path))!;
        Assert.Equal(status, (string?)health["status"]);
    }

    [Fact]
    public async Task A_problem_is_explained_in_plain_text_too()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/problems/unknown-field");
        request.Headers.Accept.Add(new("text/plain"));
        using var response = await service.Client.SendAsync(request);
        Assert.Equal("text/plain", response.Content.Headers.ContentType?.MediaType);
    }

    private static HttpRequestMessage Posting(byte[] body)
    {
        var content = new ByteArrayContent(body);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        return new(HttpMethod.Post, "/v1/forms") { Content = content };
    }

    private static async Task<string?> CodeOf(HttpResponseMessage response) =>
        (string?)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["code"];

    /// <summary>A calculation that ends when it is told to.</summary>
    private sealed class HeldTurn : IDisposable
    {
        private readonly ManualResetEventSlim _finish = new();

        public HeldTurn(Func<EndpointFilterDelegate, Task<object?>> call)
        {
            using var begun = new ManualResetEventSlim();
            Answer = call(held =>
            {
                begun.Set();
                Assert.True(_finish.Wait(TimeSpan.FromSeconds(30)));
                held.GetArgument<CancellationToken>(0).ThrowIfCancellationRequested();
                return new(default(object));
            });
            Assert.True(begun.Wait(TimeSpan.FromSeconds(30)));
        }

        public Task<object?> Answer { get; }

        public void Finish() => _finish.Set();

        public void Dispose() => _finish.Dispose();
    }

    /// <summary>A body whose end is held back.</summary>
    private sealed class SlowContent : HttpContent
    {
        private readonly byte[] _body;
        private readonly TaskCompletionSource _started = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource _finish = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public SlowContent(byte[] body)
        {
            _body = body;
            Headers.ContentType = new("application/json");
        }

        public Task Started => _started.Task;

        public void Finish() => _finish.TrySetResult();

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            await stream.WriteAsync(_body.AsMemory(0, 10));
            await stream.FlushAsync();
            await Task.Delay(200);
            _started.TrySetResult();
            await _finish.Task.WaitAsync(TimeSpan.FromSeconds(10));
            await stream.WriteAsync(_body.AsMemory(10));
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }
}
