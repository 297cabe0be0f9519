namespace FormApi.Tests;

/// <summary>The head of an answer without its body, over a real connection: the server itself keeps the body back.</summary>
public sealed class HeadTests
{
    [Theory]
    [InlineData("/v1/materials", "200 OK", "ETag: ")]
    [InlineData("/v1/materials/unobtainium", "404 Not Found", "application/problem+json")]
    [InlineData("/v1/forms", "405 Method Not Allowed", "Allow: POST")]
    [InlineData("/health/ready", "200 OK", "application/json")]
    public async Task A_head_is_that_of_the_whole(string path, string status, string header)
    {
        using var host = Service.OnPort();
        using var caller = await Caller.To(host);
        await caller.Send($"HEAD {path} HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n");
        var head = await caller.ReadTo("the end of the connection");
        Assert.StartsWith($"HTTP/1.1 {status}\r\n", head, StringComparison.Ordinal);
        Assert.Contains(header, head, StringComparison.Ordinal);
        Assert.EndsWith("\r\n\r\n", head, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_head_of_a_link_has_its_tag_and_answers_to_it()
    {
        using var host = Service.OnPort();
        var link = (string)(await host.Form(Requests.Arc()))["links"]!["form"]!;
        using var whole = await host.Client.GetAsync(link);
        using var head = await host.Client.SendAsync(new(HttpMethod.Head, link));
        Assert.Equal(whole.StatusCode, head.StatusCode);
        Assert.Equal(whole.Headers.ETag, head.Headers.ETag);
        Assert.Empty(await head.Content.ReadAsByteArrayAsync());
        using var again = new HttpRequestMessage(HttpMethod.Head, link);
        again.Headers.IfNoneMatch.Add(whole.Headers.ETag!);
        using var unchanged = await host.Client.SendAsync(again);
        Assert.Equal(System.Net.HttpStatusCode.NotModified, unchanged.StatusCode);
    }
}
