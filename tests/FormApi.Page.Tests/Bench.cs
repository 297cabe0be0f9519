using System.Globalization;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FormApi.Page.Tests;

/// <summary>The real service on a port of its own, and a real browser in front of it.</summary>
public sealed class Bench : IAsyncLifetime
{
    private static readonly string[] ChromiumNames = ["chromium", "chromium-browser", "google-chrome"];

    private WebApplicationFactory<Program> _service = null!;
    private IPlaywright _playwright = null!;
    private IBrowser _browser = null!;

    /// <summary>Where the page is.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>Calls of the service beside the page.</summary>
    public HttpClient Client { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        // A busy machine plans slowly; what does not come at all is found all the same.
        Assertions.SetDefaultExpectTimeout(20_000);
        (_service, Address) = Serve();
        Client = new HttpClient { BaseAddress = Address };
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = Chromium(), Args = ["--no-sandbox"] });
    }

    public async Task DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
        Client.Dispose();
        await _service.DisposeAsync();
    }

    /// <summary>A service with settings of its own, which the caller disposes of.</summary>
    public static (WebApplicationFactory<Program> Service, Uri Address) Serve(params (string Key, string Value)[] settings)
    {
        var service = new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
        {
            host.UseEnvironment("Production");
            host.UseSetting("urls", "http://127.0.0.1:0");
            host.UseSetting("Serilog:MinimumLevel:Default", "Fatal");
            host.UseSetting("Limits:Seconds", "60");
            foreach (var (key, value) in settings)
                host.UseSetting(key, value);
        });
        service.UseKestrel();
        service.StartServer();
        var address = service.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        return (service, new Uri(address.TrimEnd('/') + "/"));
    }

    /// <summary>A tab of a browser without a past.</summary>
    /// <param name="width">Its width [px].</param>
    /// <param name="scheme">Light or dark.</param>
    /// <param name="keepsWorking">Whether the page may keep itself for when the service is away; without, each call is the service's.</param>
    public async Task<Tab> Open(int width = 1280, ColorScheme scheme = ColorScheme.Light, bool keepsWorking = false)
    {
        var context = await _browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = width < 600 ? 844 : 900 },
            ColorScheme = scheme,
            HasTouch = width < 600,
            ReducedMotion = ReducedMotion.Reduce,
            ServiceWorkers = keepsWorking ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
        });
        context.SetDefaultTimeout(20_000);
        return new Tab(await context.NewPageAsync(), Address);
    }

    /// <summary>What the service answers beside the page.</summary>
    /// <param name="path">The path.</param>
    /// <param name="request">The request.</param>
    public async Task<JsonNode> Answer(string path, JsonNode request)
    {
        using var response = await Client.PostAsJsonAsync(path, request);
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!;
    }

    /// <summary>A number as JSON writes it, from text of the page.</summary>
    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string Chromium() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => ChromiumNames.Select(name => Path.Combine(folder, name)))
        .FirstOrDefault(File.Exists) ?? throw new InvalidOperationException("No Chromium on the path: apt-get install chromium.");
}

/// <summary>One service and one browser for all tests of the page.</summary>
[CollectionDefinition(Name)]
public sealed class Benches : ICollectionFixture<Bench>
{
    public const string Name = "bench";
}
