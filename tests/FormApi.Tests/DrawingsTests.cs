using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;

namespace FormApi.Tests;

/// <summary>One request as a picture or a file, by Accept.</summary>
public sealed class DrawingsTests(Service service) : IClassFixture<Service>
{
    private static readonly string Stem = Repository.PathOf("openapi", "examples", "drawForm.cab-corner-arc");

    [Theory]
    [InlineData("image/svg+xml", "<svg")]
    [InlineData("application/pdf", "%PDF-")]
    [InlineData("image/vnd.dxf", "")]
    [InlineData("text/csv", "")]
    [InlineData("model/gltf-binary", "glTF")]
    public async Task Every_media_type_is_answered_and_tagged(string media, string beginning)
    {
        foreach (var example in Directory.GetFiles(Repository.PathOf("openapi", "examples"), "computeForm.*.request.json"))
        {
            if (example.Contains("fold-too-sharp", StringComparison.Ordinal) || example.Contains("cannot", StringComparison.Ordinal))
                continue;
            using var response = await Draw(media, await File.ReadAllTextAsync(example));
            var bytes = await response.Content.ReadAsByteArrayAsync();
            Assert.True(200 == (int)response.StatusCode, example + Encoding.UTF8.GetString(bytes));
            Assert.Equal(media, response.Content.Headers.ContentType!.MediaType);
            Assert.Contains(beginning, Encoding.Latin1.GetString(bytes[..Math.Min(200, bytes.Length)]), StringComparison.Ordinal);
            Assert.NotNull(response.Headers.ETag);
        }
    }

    [Fact]
    public async Task A_machine_never_receives_a_form_that_cannot_be_made()
    {
        var request = (await File.ReadAllTextAsync(Stem + ".request.json")).Replace("\"length\": 1250", "\"length\": 100", StringComparison.Ordinal);
        foreach (var media in (string[])["image/vnd.dxf", "text/csv"])
        {
            using var refused = await Draw(media, request);
            Assert.Equal(422, (int)refused.StatusCode);
            using var problem = JsonDocument.Parse(await refused.Content.ReadAsStreamAsync());
            Assert.Equal("drawing.cannot-be-made", problem.RootElement.GetProperty("code").GetString());
        }

        foreach (var media in (string[])["image/svg+xml", "application/pdf"])
        {
            using var drawn = await Draw(media, request);
            Assert.Equal(200, (int)drawn.StatusCode);
        }
    }

    [Fact]
    public async Task Media_types_that_are_not_there_are_answered_with_those_that_are()
    {
        using var response = await Draw("image/png", await File.ReadAllTextAsync(Stem + ".request.json"));
        Assert.Equal(406, (int)response.StatusCode);
        Assert.Contains("image/vnd.dxf", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Paper_is_a4_or_letter()
    {
        using var content = new StringContent(await File.ReadAllTextAsync(Stem + ".request.json"), Encoding.UTF8, "application/json");
        using var response = await service.Client.PostAsync("/v1/forms/drawing?paper=parchment", content);
        Assert.Equal(400, (int)response.StatusCode);
    }

    private async Task<HttpResponseMessage> Draw(string media, string body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/forms/drawing");
        request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue(media));
        return await service.Client.SendAsync(request);
    }
}
