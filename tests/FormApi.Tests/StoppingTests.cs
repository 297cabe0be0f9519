using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace FormApi.Tests;

/// <summary>A service that is told to stop loses nothing that it has acknowledged.</summary>
public sealed class StoppingTests
{
    private static readonly string Line =
        $$"""{"operation":"form","request":{{Requests.Arc().With("/panel/springback", """{"model":"pure-bending"}""").ToJsonString()}}}""" + "\n";

    [Fact]
    [Trait("Category", "Long")]
    public async Task Readiness_is_red_at_once_and_requests_are_answered_on()
    {
        using var service = Service.With(("Drain:Seconds", "5"), ("Drain:EndSeconds", "1"));
        service.Services.GetRequiredService<IHostApplicationLifetime>().StopApplication();
        using var ready = await service.Client.GetAsync("/health/ready");
        Assert.Equal(503, (int)ready.StatusCode);
        Assert.Contains("stopping", await ready.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var live = await service.Client.GetAsync("/health/live");
        Assert.Equal(200, (int)live.StatusCode);
        using var form = await service.Post("/v1/forms", Requests.Arc().ToJsonString());
        Assert.Equal(200, (int)form.StatusCode);
        using var batch = await service.Post("/v1/batches", System.Text.Encoding.UTF8.GetBytes(Line), "application/x-ndjson");
        Assert.Equal("stopping", (string)JsonNode.Parse(await batch.Content.ReadAsStringAsync())!["code"]!);
    }

    [Fact]
    public async Task A_batch_ends_with_the_line_to_resume_from_and_every_line_before_is_answered()
    {
        using var service = Service.OnPort(("Drain:Seconds", "1"), ("Drain:EndSeconds", "1"));
        using var caller = await Caller.To(service);
        var chunk = $"{Line.Length:x}\r\n{Line}\r\n";
        await caller.Send("POST /v1/batches HTTP/1.1\r\nHost: here\r\nContent-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n" + chunk + chunk);
        var answered = await caller.ReadTo("\n\r\n");
        service.Services.GetRequiredService<IHostApplicationLifetime>().StopApplication();
        answered += await caller.ReadTo("0\r\n\r\n");
        // Without the framing of chunks.
        answered = Regex.Replace(answered, "\r\n[0-9a-f]+\r\n", "");
        var read = answered.Split('\n').Where(line => line.StartsWith('{')).Select(line => JsonNode.Parse(line)!).ToArray();
        Assert.Equal(Enumerable.Range(1, read.Length), read.Select(answer => (int)answer["line"]!));
        Assert.All(read.SkipLast(1), answer => Assert.Equal(200, (int)answer["status"]!));
        Assert.Equal((503, read.Length), ((int)read[^1]["status"]!, (int)read[^1]["resumeFrom"]!));
        Assert.InRange(read.Length, 2, 3);
    }
}
