using System.Buffers.Text;
using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Links that hold a whole request: the same bytes as its POST, tags, and what somebody may put into one.</summary>
public sealed class LinksTests(Service service) : IClassFixture<Service>
{
    public static TheoryData<string> Forms() => [.. Requests.Examples().Select(example => example.Name)];

    public static TheoryData<string> Programs() => [.. Requests.Programs().Select(example => example.Name)];

    [Theory]
    [MemberData(nameof(Forms))]
    [Trait("Category", "Long")]
    public async Task A_form_link_gives_the_bytes_of_its_post(string name)
    {
        using var posted = await service.Post("/v1/forms", Requests.Example("computeForm", name).ToJsonString());
        var bytes = await posted.Content.ReadAsByteArrayAsync();
        var links = JsonNode.Parse(bytes)!["links"]!;
        using var opened = await service.Client.GetAsync((string)links["form"]!);
        Assert.Equal(HttpStatusCode.OK, opened.StatusCode);
        Assert.Equal(bytes, await opened.Content.ReadAsByteArrayAsync());
        Assert.Equal(posted.Headers.ETag, opened.Headers.ETag);
        Assert.Equal("no-cache, private", opened.Headers.CacheControl!.ToString());
        Assert.Equal(["Accept", "Accept-Encoding", "Prefer"], opened.Headers.Vary);
    }

    [Theory]
    [InlineData("image/svg+xml")]
    [InlineData("application/pdf")]
    [InlineData("image/vnd.dxf")]
    [InlineData("text/csv")]
    [InlineData("model/gltf-binary")]
    [InlineData("image/vnd.dxf", "?part=check-template")]
    [InlineData("application/pdf", "?part=form-blank&layout=full&paper=letter")]
    public async Task A_drawing_link_gives_the_bytes_of_its_post_in_every_media_type(string media, string query = "")
    {
        var request = Requests.Example("computeForm", "two-bends-and-a-flat");
        var links = (await service.Form(request))["links"]!;
        using var post = new HttpRequestMessage(HttpMethod.Post, "/v1/forms/drawing" + query) { Content = new StringContent(request.ToJsonString(), Encoding.UTF8, "application/json") };
        using var get = new HttpRequestMessage(HttpMethod.Get, (string)links["drawing"]! + query);
        post.Headers.Accept.ParseAdd(media);
        get.Headers.Accept.ParseAdd(media);
        using var posted = await service.Client.SendAsync(post);
        using var opened = await service.Client.SendAsync(get);
        Assert.Equal(HttpStatusCode.OK, opened.StatusCode);
        Assert.Equal(posted.Content.Headers.ContentType, opened.Content.Headers.ContentType);
        Assert.Equal(posted.Headers.ETag, opened.Headers.ETag);
        Assert.Equal(await posted.Content.ReadAsByteArrayAsync(), await opened.Content.ReadAsByteArrayAsync());
    }

    [Theory]
    [MemberData(nameof(Programs))]
    public async Task A_program_link_gives_the_bytes_of_its_post(string name)
    {
        using var posted = await service.Post("/v1/programs", Requests.Example("programBrake", name).ToJsonString());
        var bytes = await posted.Content.ReadAsByteArrayAsync();
        var links = JsonNode.Parse(bytes)!["links"]!;
        Assert.Equal(bytes, await service.Client.GetByteArrayAsync((string)links["program"]!));
        if (links["form"] is { } form)
            Assert.Equal(HttpStatusCode.OK, (await service.Client.GetAsync((string)form!)).StatusCode);
    }

    [Theory]
    [MemberData(nameof(Programs))]
    [Trait("Category", "Long")]
    public async Task A_controller_is_given_one_step_with_its_picture(string name)
    {
        var whole = await service.Program(Requests.Example("programBrake", name));
        var link = (string)whole["links"]!["program"]!;
        var steps = whole["steps"]!.AsArray();
        Assert.Equal(steps.Count, steps.Select(step => (string)step!["id"]!).Distinct().Count());
        foreach (var number in (int[])[1, steps.Count])
        {
            var one = JsonNode.Parse(await service.Client.GetStringAsync($"{link}?step={number}"))!;
            var step = one["steps"]!.AsArray().Single()!.AsObject();
            var picture = (string)step["picture"]!;
            using var drawn = await Get($"{link}?step={number}", "image/svg+xml");
            Assert.Equal(picture, await drawn.Content.ReadAsStringAsync());
            var texts = System.Xml.Linq.XDocument.Parse(picture).Descendants().Where(item => item.Name.LocalName == "text").Select(item => item.Value).ToArray();
            Assert.Contains($"Step {number} of {steps.Count}: fold {step["fold"]}", texts);
            step.Remove("picture");
            Assert.True(JsonNode.DeepEquals(steps[number - 1], step));
        }

        foreach (var none in (int[])[0, steps.Count + 1])
        {
            using var response = await Get($"{link}?step={none}", "application/json");
            await AssertProblem(response, 404, "not-found");
        }

        using var word = await Get($"{link}?step=first", "application/json");
        await AssertProblem(word, 400, "bad-request");
    }

    [Fact]
    public async Task A_form_that_cannot_be_made_has_no_link_to_a_program()
    {
        var answer = await service.Form(Requests.Example("computeForm", "fold-too-sharp"));
        Assert.Equal("cannot-be-made", (string)answer["verdict"]!);
        Assert.Null(answer["links"]!["program"]);
        Assert.NotNull(answer["links"]!["form"]);
    }

    [Fact]
    public async Task A_form_leads_to_the_program_of_the_same_request()
    {
        var request = Requests.Example("programBrake", "counter-corner-leaf");
        request["brake"]!.AsObject().Remove("tools");
        var asForm = request.DeepClone().AsObject();
        var links = (await service.Form(asForm))["links"]!;
        var opened = JsonNode.Parse(await service.Client.GetStringAsync((string)links["program"]!))!;
        var posted = await service.Program(request);
        Assert.Equal(posted["fingerprint"]!.ToString(), opened["fingerprint"]!.ToString());
        Assert.Equal(posted["links"]!["form"]!.ToString(), links["form"]!.ToString());
    }

    [Fact]
    public async Task What_plans_no_form_has_no_such_link()
    {
        var standing = (await service.Prediction(Requests.Standing()))["links"]!;
        Assert.All(["form", "drawing", "program"], link => Assert.Null(standing[link]));
        var stations = (await service.Program(Requests.Program()))["links"]!;
        Assert.Null(stations["form"]);
        Assert.NotNull(stations["program"]);
    }

    [Fact]
    public async Task A_link_is_the_canonical_request_deflated_and_in_base64url()
    {
        var answer = await service.Form(Requests.Arc());
        var text = TextOf((string)answer["links"]!["form"]!);
        using var inflate = new DeflateStream(new MemoryStream(Base64Url.DecodeFromChars(text)), CompressionMode.Decompress);
        using var reader = new StreamReader(inflate, Encoding.UTF8);
        var json = await reader.ReadToEndAsync();
        Assert.StartsWith("{\"brake\":{\"assumed\":[],\"capacity\":null", json, StringComparison.Ordinal);
        Assert.True(JsonNode.DeepEquals(answer["request"], JsonNode.Parse(json)));
    }

    [Theory]
    [InlineData("form", "application/json")]
    [InlineData("drawing", "image/svg+xml")]
    [InlineData("drawing", "text/csv")]
    [InlineData("program", "application/json")]
    [InlineData("program", "text/csv")]
    [Trait("Category", "Long")]
    public async Task Whoever_has_the_answer_is_not_sent_it_again(string what, string media)
    {
        var link = (string)(await service.Form(Requests.Arc()))["links"]![what]!;
        using var first = await Get(link, media);
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        using var again = await Get(link, media, first.Headers.ETag!.Tag);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        Assert.Empty(await again.Content.ReadAsByteArrayAsync());
        Assert.Equal(first.Headers.ETag, again.Headers.ETag);
        Assert.Equal(["Accept", "Accept-Encoding", "Prefer"], again.Headers.Vary);
        Assert.Equal("no-cache, private", again.Headers.CacheControl!.ToString());
        using var other = await Get(link, media, first.Headers.ETag!.Tag.Replace("a", "b", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.OK, other.StatusCode);
    }

    [Fact]
    public async Task A_tag_of_one_media_type_does_not_stand_for_another()
    {
        var link = (string)(await service.Form(Requests.Arc()))["links"]!["drawing"]!;
        using var svg = await Get(link, "image/svg+xml");
        using var csv = await Get(link, "text/csv", svg.Headers.ETag!.Tag);
        Assert.Equal(HttpStatusCode.OK, csv.StatusCode);
        Assert.NotEqual(svg.Headers.ETag, csv.Headers.ETag);
    }

    [Fact]
    public async Task A_link_in_other_words_than_the_canonical_ones_answers_alike()
    {
        var request = Requests.Arc();
        var link = $"/v1/links/{Link(request.ToJsonString(new() { WriteIndented = true }))}/form";
        using var opened = await Get(link, "application/json");
        using var posted = await service.Post("/v1/forms", request.ToJsonString());
        Assert.Equal(await posted.Content.ReadAsStringAsync(), await opened.Content.ReadAsStringAsync());
        using var again = await Get(link, "application/json", opened.Headers.ETag!.Tag);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        using var any = await Get(link, "application/json", "*");
        Assert.Equal(HttpStatusCode.NotModified, any.StatusCode);
    }

    [Theory]
    [InlineData("{\"units\":\"mm\"", 400, "malformed-json")]
    [InlineData(" ", 400, "empty-body")]
    [InlineData("[]", 400, "wrong-type")]
    [InlineData("{\"units\":\"mm\",\"panle\":{}}", 400, "unknown-field")]
    public async Task A_link_that_holds_no_request_is_told_what_is_wrong_with_it(string json, int status, string code)
    {
        using var response = await Get($"/v1/links/{Link(json)}/form", "application/json");
        await AssertProblem(response, status, code);
    }

    [Theory]
    [InlineData("a")]
    [InlineData("abcde")]
    [InlineData("ab=")]
    [InlineData("ab==")]
    [InlineData("a+b*")]
    [InlineData("%20%20%20%20")]
    [InlineData("%C3%A9%C3%A9%C3%A9%C3%A9")]
    [InlineData("%F0%9F%98%80")]
    [InlineData("AAAA")]
    [InlineData("____")]
    [InlineData("q1bKTM7PVbIyrQUA..")]
    public async Task Hostile_text_is_no_link(string text)
    {
        using var form = await Get($"/v1/links/{text}/form", "application/json");
        Assert.Equal(HttpStatusCode.BadRequest, form.StatusCode);
        Assert.Equal("application/problem+json", form.Content.Headers.ContentType!.MediaType);
        using var drawing = await Get($"/v1/links/{text}/drawing", "image/svg+xml");
        Assert.Equal(HttpStatusCode.BadRequest, drawing.StatusCode);
        using var program = await Get($"/v1/links/{text}/program", "text/csv", "\"x\"");
        Assert.Equal(HttpStatusCode.BadRequest, program.StatusCode);
    }

    [Fact]
    [Trait("Category", "Long")]
    public async Task Every_truncation_of_a_link_is_refused()
    {
        var text = TextOf((string)(await service.Form(Requests.Arc()))["links"]!["form"]!);
        for (var length = 1; length < text.Length; length++)
        {
            using var response = await Get($"/v1/links/{text[..length]}/form", "application/json");
            Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        }
    }

    [Fact]
    public async Task A_link_with_something_added_is_refused()
    {
        var text = TextOf((string)(await service.Form(Requests.Arc()))["links"]!["form"]!);
        var pressed = Base64Url.DecodeFromChars(text);
        var wrapped = new MemoryStream();
        using (var zlib = new ZLibStream(wrapped, CompressionLevel.SmallestSize, leaveOpen: true))
            zlib.Write("{}"u8);
        string[] others =
        [
            .. Enumerable.Range(1, 40).Select(more => Base64Url.EncodeToString([.. pressed, .. new byte[more]])),
            text + "%0A",
            "%20" + text,
            text.Insert(7, "%20"),
            text.Insert(8, "%0D%0A"),
            Base64Url.EncodeToString(wrapped.ToArray()),
        ];
        foreach (var other in others)
        {
            using var response = await Get($"/v1/links/{other}/form", "application/json");
            await AssertProblem(response, 400, "broken-link");
        }
    }

    [Theory]
    [InlineData("gzip")]
    [InlineData("br")]
    public async Task Whoever_has_it_compressed_is_told_that_very_tag(string encoding)
    {
        var link = (string)(await service.Form(Requests.Arc()))["links"]!["form"]!;
        using var first = await Get(link, "application/json", encoding: encoding);
        Assert.Equal([encoding], first.Content.Headers.ContentEncoding);
        var tag = first.Headers.ETag!.Tag;
        Assert.EndsWith($"-{encoding}\"", tag, StringComparison.Ordinal);
        foreach (var sent in (string[])[tag, "W/" + tag, "\"other\", " + tag])
        {
            using var again = await Get(link, "application/json", sent, encoding);
            Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
            Assert.Equal(tag, again.Headers.ETag!.ToString());
        }

        using var unknown = await Get(link, "application/json", tag.Replace(encoding, "evil", StringComparison.Ordinal), encoding);
        Assert.Equal(HttpStatusCode.OK, unknown.StatusCode);
    }

    [Fact]
    public async Task Random_text_never_breaks_the_service()
    {
        var random = new Random(7);
        for (var round = 0; round < 500; round++)
        {
            var bytes = new byte[random.Next(1, 600)];
            random.NextBytes(bytes);
            using var response = await Get($"/v1/links/{Base64Url.EncodeToString(bytes)}/{(round % 3) switch { 0 => "form", 1 => "drawing", _ => "program" }}", "*/*");
            Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        }
    }

    [Fact]
    public async Task A_link_that_is_too_long_is_refused_unread()
    {
        using var response = await Get($"/v1/links/{new string('A', 4097)}/form", "application/json");
        await AssertProblem(response, 414, "link-too-long");
    }

    [Fact]
    public async Task A_link_that_inflates_without_end_is_refused()
    {
        using var response = await Get($"/v1/links/{Bomb()}/form", "application/json");
        await AssertProblem(response, 413, "too-large");
        Assert.Contains("Limits:LinkBytes", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_request_too_long_for_a_link_has_none()
    {
        var random = new Random(1);
        var points = new JsonArray();
        for (var i = 0; i <= 200; i++)
        {
            var angle = Math.PI / 2 * i / 200;
            points.Add(new JsonArray(120 * Math.Sin(angle) + 1e-4 * random.NextDouble(), 120 * (1 - Math.Cos(angle)) + 1e-4 * random.NextDouble()));
        }

        var links = (await service.Form(Requests.Arc().With("/panel/curve", new JsonObject { ["type"] = "points", ["points"] = points, ["tolerance"] = 0.2 }.ToJsonString())))["links"]!;
        Assert.All(["form", "drawing", "program"], link => Assert.Null(links[link]));
    }

    [Theory]
    [InlineData("https://forms.example", true)]
    [InlineData("https://forms.example/shop/", true)]
    [InlineData(null, false)]
    public async Task A_sheet_carries_its_link_where_a_public_address_is_set(string? address, bool carries)
    {
        using var host = address is null ? Service.In("Production") : Service.With(("Links:PublicBaseUrl", address));
        var link = (string)(await host.Form(Requests.Arc()))["links"]!["drawing"]!;
        var svg = await host.Client.GetStringAsync(link);
        Assert.Equal(carries, svg.Contains("crispEdges", StringComparison.Ordinal));
        var tooLong = Service.With(("Links:PublicBaseUrl", "https://" + new string('a', 60) + ".example/" + new string('b', 900)));
        Assert.DoesNotContain("crispEdges", await tooLong.Client.GetStringAsync(link), StringComparison.Ordinal);
        tooLong.Dispose();
    }

    /// <summary>The text of a link that goes on for megabytes once inflated.</summary>
    internal static string Bomb()
    {
        var bomb = Link(new string(' ', 2_000_000));
        Assert.InRange(bomb.Length, 1000, 4096);
        return bomb;
    }

    private static string TextOf(string link) => link.Split('/')[3];

    private static string Link(string json)
    {
        var pressed = new MemoryStream();
        using (var deflate = new DeflateStream(pressed, CompressionLevel.SmallestSize, leaveOpen: true))
            deflate.Write(Encoding.UTF8.GetBytes(json));
        return Base64Url.EncodeToString(pressed.ToArray());
    }

    private static async Task AssertProblem(HttpResponseMessage response, int status, string code)
    {
        Assert.Equal(status, (int)response.StatusCode);
        var problem = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal(code, (string)problem["code"]!);
        Assert.Equal("no-store", response.Headers.CacheControl!.ToString());
    }

    private Task<HttpResponseMessage> Get(string link, string accept, string? tag = null, string? encoding = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, link);
        request.Headers.TryAddWithoutValidation("Accept", accept);
        if (tag is not null)
            request.Headers.TryAddWithoutValidation("If-None-Match", tag);
        if (encoding is not null)
            request.Headers.AcceptEncoding.ParseAdd(encoding);
        return service.Client.SendAsync(request);
    }
}
