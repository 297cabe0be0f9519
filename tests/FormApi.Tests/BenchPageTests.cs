using System.Text.RegularExpressions;
using FormApi.Page;

namespace FormApi.Tests;

/// <summary>The page at <c>/</c> as files: each is served, may be kept for good, and refers to nothing outside.</summary>
public sealed partial class BenchPageTests(Service service) : IClassFixture<Service>
{
    private static PageFiles Files => PageFiles.Built;

    [Fact]
    public async Task Every_file_may_be_kept_for_good_under_its_fingerprint()
    {
        Assert.True(Files.All.Count() > 15, "The files were not found.");
        foreach (var file in Files.All)
        {
            using var response = await service.Client.GetAsync($"/{Files.Address}/{file.Name}");
            Assert.True(response.IsSuccessStatusCode, file.Name);
            Assert.Equal("public, max-age=31536000, immutable", response.Headers.CacheControl!.ToString());
            Assert.DoesNotContain("unsafe", response.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
            Assert.Equal(file.MediaType.Split(';')[0], response.Content.Headers.ContentType!.MediaType);
            Assert.Equal(file.Content, await response.Content.ReadAsByteArrayAsync());
        }
    }

    [Theory]
    [InlineData("/page/0000000000000000/main.js")]
    [InlineData("/page/none")]
    public async Task Another_fingerprint_is_not_found(string path)
    {
        using var response = await service.Client.GetAsync(path);
        Assert.Equal(404, (int)response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType!.MediaType);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/page/service-worker.js")]
    public async Task What_keeps_its_address_is_asked_for_again_and_not_sent_again(string path)
    {
        using var first = await service.Client.GetAsync(path);
        Assert.True(first.Headers.CacheControl!.NoCache);
        Assert.DoesNotContain("@", await first.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using var second = await service.Client.SendAsync(request);
        Assert.Equal(304, (int)second.StatusCode);
    }

    [Fact]
    public void Modules_name_only_files_that_there_are()
    {
        var names = Files.All.Select(file => file.Name).ToHashSet();
        foreach (var file in Files.All.Where(file => file.Name.EndsWith(".js", StringComparison.Ordinal)))
        {
            var folder = Path.GetDirectoryName(file.Name)!;
            foreach (Match import in Import().Matches(System.Text.Encoding.UTF8.GetString(file.Content)))
                Assert.Contains(Path.GetRelativePath(".", Path.Combine(folder, import.Groups[1].Value)).Replace('\\', '/'), names);
        }
    }

    [Fact]
    public void Nothing_is_loaded_from_elsewhere_and_no_script_or_style_is_inside_the_page()
    {
        foreach (var file in Files.All.Append(Files.StartPage).Append(Files.ServiceWorker).Where(file => !file.Name.StartsWith("vendor/", StringComparison.Ordinal)))
        {
            var text = System.Text.Encoding.UTF8.GetString(file.Content).Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);
            Assert.DoesNotMatch("https?://", text);
            Assert.DoesNotMatch("eval\\(|innerHTML|<style|<script(?! type=\"module\" src=)| style=\"[^\"]", text.Replace("/<style>", "", StringComparison.Ordinal).Replace("/ style=\"", "", StringComparison.Ordinal));
        }
    }

    [GeneratedRegex("""from "(\.[^"]+)";""")]
    private static partial Regex Import();
}
