using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FormApi.Contract;

namespace FormApi.Tests;

/// <summary>The pages at <c>/docs</c> load everything from this service and hold nothing that a strict browser refuses.</summary>
public sealed partial class ReadingPagesTests(Service service) : IClassFixture<Service>
{
    private static readonly Uri Start = new("http://localhost/docs/index.html");

    [Theory]
    [InlineData("/docs")]
    [InlineData("/docs/")]
    public async Task Their_address_leads_to_the_page(string address)
    {
        using var moved = await service.Client.GetAsync(address);
        Assert.Equal(HttpStatusCode.Found, moved.StatusCode);
        using var response = await service.Client.GetAsync(moved.Headers.Location);
        Assert.Equal("text/html", response.Content.Headers.ContentType?.MediaType);
        Assert.Contains("<h1>FormApi</h1>", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_file_comes_under_a_policy_without_exceptions()
    {
        foreach (var page in ReadingPages.Pages)
        {
            using var response = await service.Client.GetAsync(new Uri(Start, page.Name));
            Assert.Equal(page.MediaType.Split(';')[0], response.Content.Headers.ContentType?.MediaType);
            var policy = Assert.Single(response.Headers.GetValues("Content-Security-Policy"));
            Assert.Equal("default-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'", policy);
            Assert.Equal("nosniff", Assert.Single(response.Headers.GetValues("X-Content-Type-Options")));
            Assert.Equal(page.Content, await response.Content.ReadAsByteArrayAsync());
        }
    }

    [Fact]
    public void The_page_holds_no_styles_and_no_script_and_links_to_nothing_outside()
    {
        var page = TextOf("index.html");
        Assert.DoesNotContain("://", page, StringComparison.Ordinal);
        Assert.DoesNotMatch(WrittenInside(), page);
        Assert.All(Elements().Matches(page), script => Assert.Contains(" src=\"./", script.Value, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Whatever_page_and_styles_refer_to_is_served()
    {
        var named = ReadingPages.Pages.Where(page => page.Name.EndsWith(".css", StringComparison.Ordinal) || page.Name.EndsWith(".html", StringComparison.Ordinal))
            .SelectMany(page => References().Matches(Encoding.UTF8.GetString(page.Content)))
            .Select(found => found.Groups["at"].Value)
            .Distinct()
            .ToArray();
        Assert.True(named.Length > 15, $"{named.Length} files");
        Assert.All(named, name => Assert.StartsWith(".", name, StringComparison.Ordinal));
        foreach (var name in named)
        {
            using var response = await service.Client.GetAsync(new Uri(Start, name));
            Assert.True(response.StatusCode == HttpStatusCode.OK, name);
        }
    }

    [Fact]
    public void No_style_sheet_and_no_script_of_ours_has_pictures_written_into_it()
    {
        foreach (var name in new[] { "index.html", "docs.css", "docs.js", "swagger-ui.css" })
            Assert.DoesNotContain("data:", TextOf(name), StringComparison.Ordinal);
        Assert.DoesNotContain("data:image", TextOf("swagger-ui-bundle.js"), StringComparison.Ordinal);
    }

    [Fact]
    public void Icons_taken_out_of_the_styles_are_pictures()
    {
        var icons = ReadingPages.Pages.Where(page => page.Name.StartsWith("icon-", StringComparison.Ordinal)).ToArray();
        Assert.True(icons.Length > 5, $"{icons.Length} icons");
        foreach (var icon in icons)
        {
            if (icon.MediaType == "image/svg+xml")
                Assert.Equal("svg", XDocument.Parse(Encoding.UTF8.GetString(icon.Content)).Root!.Name.LocalName);
            else
                Assert.Equal(icon.MediaType == "image/png" ? 0x89 : 0xFF, icon.Content[0]);
        }
    }

    // The viewer's bar is a layout of its own, and brings its styles along inside the page; its badge is from elsewhere.
    [Fact]
    public void The_viewer_brings_neither_its_own_bar_nor_a_badge()
    {
        var script = TextOf("docs.js");
        Assert.Contains("layout: \"BaseLayout\"", script, StringComparison.Ordinal);
        Assert.Contains("validatorUrl: null", script, StringComparison.Ordinal);
        Assert.DoesNotContain("Standalone", script + TextOf("index.html"), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_page_that_a_browser_has_is_not_sent_again()
    {
        using var first = await service.Client.GetAsync(Start);
        using var again = new HttpRequestMessage(HttpMethod.Get, Start);
        again.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using var second = await service.Client.SendAsync(again);
        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
    }

    [Fact]
    public async Task What_is_no_page_is_a_problem()
    {
        using var response = await service.Client.GetAsync("/docs/nothing.js");
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
    }

    private static string TextOf(string name) => Encoding.UTF8.GetString(ReadingPages.Pages.Single(page => page.Name == name).Content);

    [GeneratedRegex("""<style|\sstyle=|\son[a-z]+=|javascript:""")]
    private static partial Regex WrittenInside();

    [GeneratedRegex("<script[^>]*>")]
    private static partial Regex Elements();

    [GeneratedRegex("""(?:(?:src|href)="|url\(["']?)(?<at>[^"')]+)""")]
    private static partial Regex References();
}
