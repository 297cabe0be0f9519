using System.Text.Json.Nodes;
using FormApi.Features.Batches;
using FormApi.Hosting.Access;
using FormApi.Http;
using Microsoft.Extensions.Options;

namespace FormApi.Tests;

/// <summary>What one caller may ask for does not depend on what others ask for.</summary>
public sealed class CallerLimitsTests
{
    private static readonly string Arc = Requests.Arc().With("/panel/springback", """{"model":"pure-bending"}""").ToJsonString();

    private static readonly (string, string)[] TwoKeys =
    [
        ("Access:Keys:0:Name", "first"), ("Access:Keys:0:Sha256", Hash("one")), ("Access:Keys:1:Name", "second"), ("Access:Keys:1:Sha256", Hash("two")),
    ];

    private static string Hash(string key) =>
        Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(key)));

    [Fact]
    public async Task A_caller_who_has_had_its_share_waits_and_the_other_is_answered()
    {
        using var service = Service.With([.. TwoKeys, ("Limits:CallerPerSecond", "0.1"), ("Limits:CallerBurst", "2")]);
        foreach (var status in (int[])[200, 200, 429])
            Assert.Equal(status, await Ask(service, "one"));
        Assert.Equal(200, await Ask(service, "two"));
        using var refused = await Send(service, "one", "/v1/forms");
        var problem = JsonNode.Parse(await refused.Content.ReadAsStringAsync())!;
        Assert.Equal("Limits__CallerPerSecond", (string)problem["limit"]!);
        // One token in ten seconds.
        Assert.InRange(refused.Headers.RetryAfter!.Delta!.Value.TotalSeconds, 5, 10);
    }

    [Fact]
    public async Task What_is_left_is_told()
    {
        using var service = Service.With([.. TwoKeys, ("Limits:CallerPerSecond", "0.1"), ("Limits:CallerBurst", "5")]);
        await Ask(service, "one");
        await Ask(service, "one");
        Assert.Equal((3, 5), (await Left(service, "one"), await Left(service, "two")));
    }

    [Theory]
    [InlineData("/v1/batches", "application/x-ndjson")]
    [InlineData("/v1/comparisons", "application/json")]
    public async Task Batches_and_comparisons_count_as_one(string path, string media)
    {
        using var service = Service.With([.. TwoKeys, ("Limits:CallerPerSecond", "0.1"), ("Limits:CallerBurst", "1")]);
        var body = path == "/v1/batches"
            ? $$"""{"operation":"form","request":{{Arc}}}"""
            : $$"""{"operation":"form","request":{{Arc}},"vary":[{"pointer":"/form/stepping/folds","values":[8,9]}]}""";
        using var first = await Send(service, "one", path, body, media);
        Assert.Equal(200, (int)first.StatusCode);
        using var second = await Send(service, "one", path, body, media);
        Assert.Equal(429, (int)second.StatusCode);
    }

    // Four places kept for 20 s each, so one is free after 5 s.
    [Fact]
    public void Whoever_finds_no_place_for_a_batch_is_told_when_one_should_be_free()
    {
        var clock = new Clock();
        using var places = new BatchPlaces(Options.Create(new Limits { Batches = 4 }), clock);
        var taken = Enumerable.Range(0, 4).Select(_ => places.TryTake()!).ToArray();
        Assert.Null(places.TryTake());
        clock.Now += 20;
        Array.ForEach(taken, place => place.Dispose());
        Assert.Equal(5, places.TooMany().RetryAfterSeconds);
        places.TryTake()!.Dispose();
        // The mean follows by a tenth.
        Assert.Equal(5, places.TooMany().RetryAfterSeconds);
        for (var i = 0; i < 10; i++)
            places.TryTake()!.Dispose();
        Assert.Equal(2, places.TooMany().RetryAfterSeconds);
    }

    private sealed class Clock : TimeProvider
    {
        public long Now { get; set; }

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Now;
    }

    private static async Task<int> Ask(Service service, string key)
    {
        using var response = await Send(service, key, "/v1/forms");
        return (int)response.StatusCode;
    }

    private static async Task<int> Left(Service service, string key)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/v1/limits");
        request.Headers.Add(ApiKeyHandler.Header, key);
        using var response = await service.Client.SendAsync(request);
        return (int)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["left"]!;
    }

    private static Task<HttpResponseMessage> Send(Service service, string key, string path, string? body = null, string media = "application/json")
    {
        var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new StringContent(body ?? Arc, System.Text.Encoding.UTF8, media) };
        request.Headers.Add(ApiKeyHandler.Header, key);
        return service.Client.SendAsync(request);
    }
}
