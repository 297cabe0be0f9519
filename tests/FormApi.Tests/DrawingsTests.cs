using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

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
    [Trait("Category", "Long")]
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

    [Theory]
    [InlineData("form-blank")]
    [InlineData("panel-blank")]
    [InlineData("check-template")]
    [InlineData("rib")]
    [InlineData("gauge-inside")]
    [InlineData("gauge-outside")]
    [InlineData("gauge-pulled")]
    [InlineData("strip-card")]
    [Trait("Category", "Long")]
    public async Task One_part_is_drawn_alone_or_refused_in_words(string part)
    {
        var body = await File.ReadAllTextAsync(Stem + ".request.json");
        foreach (var media in (string[])["image/svg+xml", "application/pdf", "image/vnd.dxf"])
        {
            using var response = await Draw(media, body, "?part=" + part);
            if (part == "rib")
            {
                await IsProblem(response, 422, "drawing.no-such-part", "no ribs");
                continue;
            }

            if (part == "strip-card" && media == "image/vnd.dxf")
            {
                await IsProblem(response, 422, "drawing.no-such-part", "to fill in");
                continue;
            }

            Assert.Equal(200, (int)response.StatusCode);
            Assert.Equal(media, response.Content.Headers.ContentType!.MediaType);
            Assert.StartsWith($"{part}-", response.Content.Headers.ContentDisposition!.FileName, StringComparison.Ordinal);
        }

        foreach (var media in (string[])["text/csv", "model/gltf-binary"])
        {
            using var response = await Draw(media, body, "?part=" + part);
            await IsProblem(response, 400, "bad-request", "leave part out");
        }
    }

    [Fact]
    public async Task What_is_said_of_a_job_is_on_its_sheets_and_in_its_links_and_changes_no_figure()
    {
        var plain = Requests.Example("computeForm", "cab-corner-arc");
        var named = (JsonObject)plain.DeepClone();
        named["sheet"] = new JsonObject { ["title"] = "Cab corner, left", ["customer"] = "Bjørn & Søn", ["order"] = "4711", ["date"] = "27 Nov 2026" };
        var (before, after) = ((JsonObject)await service.Form(plain), (JsonObject)await service.Form(named));
        Assert.Equal("Bjørn & Søn", (string?)after["request"]!["sheet"]!["customer"]);
        Assert.Null(before["request"]!["sheet"]);
        foreach (var link in (string[])["drawing", "program"])
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, (string)after["links"]![link]!);
            request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue("image/svg+xml"));
            using var drawn = await service.Client.SendAsync(request);
            var svg = await drawn.Content.ReadAsStringAsync();
            Assert.True(drawn.IsSuccessStatusCode, svg);
            Assert.All((string[])["Cab corner, left", "Bjørn &amp; Søn", "4711", "27 Nov 2026"], text => Assert.Contains(text, svg, StringComparison.Ordinal));
        }

        // All but what names the request.
        foreach (var answer in (JsonObject[])[before, after])
        {
            foreach (var name in (string[])["request", "fingerprint", "links"])
                Assert.True(answer.Remove(name));
            foreach (var step in answer["next"]!.AsArray())
                step!.AsObject().Remove("link");
        }

        Assert.Equal(before.ToJsonString(), after.ToJsonString());
    }

    [Theory]
    [InlineData("customer", "板金", "not-shown")]
    [InlineData("part", "two\nlines", "not-shown")]
    [InlineData("order", " ", "empty")]
    [InlineData("revision", "1234567890123456789012345678901234567890123456789012345678901", "too-long")]
    public async Task What_a_sheet_cannot_show_is_refused_and_not_replaced(string field, string text, string code)
    {
        foreach (var (path, operation, example) in ((string, string, string)[])[("/v1/forms/drawing", "computeForm", "cab-corner-arc"), ("/v1/programs", "programBrake", "cowl-cone-leaf")])
        {
            var request = Requests.Example(operation, example);
            request["sheet"] = new JsonObject { [field] = text };
            using var refused = await service.Post(path, request.ToJsonString());
            Assert.Equal(422, (int)refused.StatusCode);
            var error = JsonNode.Parse(await refused.Content.ReadAsStringAsync())!["errors"]![0]!;
            Assert.Equal(("/sheet/" + field, code), ((string)error["pointer"]!, (string)error["code"]!));
        }
    }

    [Theory]
    [InlineData("?part=lid", "gauge-pulled")]
    [InlineData("?part=Rib", "form-blank, panel-blank")]
    [InlineData("?part=", "rib")]
    [InlineData("?part=0", "rib")]
    [InlineData("?layout=wide", "stick or full")]
    [InlineData("?paper=parchment", "a4 or letter")]
    public async Task A_word_that_a_query_does_not_know_is_answered_with_those_that_it_does(string query, string allowed)
    {
        using var response = await Draw("application/pdf", await File.ReadAllTextAsync(Stem + ".request.json"), query);
        await IsProblem(response, 400, "bad-request", allowed);
    }

    [Fact]
    public async Task A_blank_is_laid_out_as_a_stick_or_in_full()
    {
        var body = await File.ReadAllTextAsync(Stem + ".request.json");
        async Task<byte[]> Pdf(string query)
        {
            using var response = await Draw("application/pdf", body, query);
            Assert.Equal(200, (int)response.StatusCode);
            return await response.Content.ReadAsByteArrayAsync();
        }

        var (usual, stick, full) = (await Pdf(""), await Pdf("?layout=stick"), await Pdf("?layout=full"));
        Assert.Equal(usual, stick);
        Assert.True(full.Length > stick.Length);
    }

    [Fact]
    public async Task A_taper_says_which_parts_it_does_not_have()
    {
        var body = await File.ReadAllTextAsync(Repository.PathOf("openapi", "examples", TaperExample()));
        using var stick = await Draw("application/pdf", body, "?layout=stick");
        await IsProblem(stick, 422, "drawing.no-such-part", "story stick");
        using var template = await Draw("image/vnd.dxf", body, "?part=check-template");
        await IsProblem(template, 422, "drawing.no-such-part", "not drawn");
        using var gauge = await Draw("image/vnd.dxf", body, "?part=gauge-inside");
        Assert.Equal(200, (int)gauge.StatusCode);
    }

    private static string TaperExample() => Directory.GetFiles(Repository.PathOf("openapi", "examples"), "computeForm.*.request.json")
        .Order(StringComparer.Ordinal)
        .First(path => File.ReadAllText(path).Contains("\"taper\"", StringComparison.Ordinal));

    private static async Task IsProblem(HttpResponseMessage response, int status, string code, string words)
    {
        var text = await response.Content.ReadAsStringAsync();
        Assert.Equal(status, (int)response.StatusCode);
        Assert.Contains(code, text, StringComparison.Ordinal);
        Assert.Contains(words, text, StringComparison.Ordinal);
    }

    private async Task<HttpResponseMessage> Draw(string media, string body, string query = "")
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/forms/drawing" + query);
        request.Content = new StringContent(body, Encoding.UTF8, "application/json");
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue(media));
        return await service.Client.SendAsync(request);
    }
}
