using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using FormApi.Features.Verification;
using Forming.Plans;
using Forming.Verification;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace FormApi.Tests;

/// <summary>The real service, in a given environment, with given settings.</summary>
public sealed class Service : IDisposable
{
    // It keeps nothing from one request to the next, so one of it serves all tests that want no other settings.
    private static readonly Lazy<WebApplicationFactory<Program>> Shared = new(() => Factory("Production", null, ("Limits:Seconds", "60")));

    private readonly WebApplicationFactory<Program> _factory;

    /// <summary>The service with a minute for each request: a busy machine's clock says nothing of one.</summary>
    public Service()
        : this(Shared.Value)
    {
    }

    private Service(
        string environment, Action<IServiceCollection>? replace, bool isOnPort = false, params (string Key, string Value)[] settings)
        : this(Factory(environment, replace, settings), isOnPort)
    {
    }

    private Service(WebApplicationFactory<Program> factory, bool isOnPort = false)
    {
        _factory = factory;
        if (isOnPort)
        {
            _factory.UseKestrel();
            _factory.StartServer();
        }

        // Following redirects would hold a body back until it is whole.
        Client = _factory.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = false, BaseAddress = _factory.ClientOptions.BaseAddress });
    }

    public HttpClient Client { get; }

    public IServiceProvider Services => _factory.Services;

    public static Service In(string environment) => new(environment, null);

    public static Service With(params (string Key, string Value)[] settings) => new("Production", null, settings: settings);

    /// <summary>The service on a port of its own, for what only a real connection shows.</summary>
    public static Service OnPort(params (string Key, string Value)[] settings) =>
        new("Production", null, isOnPort: true, [("urls", "http://127.0.0.1:0"), .. settings]);

    /// <summary>The same, with what it logs kept.</summary>
    public static Service OnPort(LogLines log, params (string Key, string Value)[] settings) =>
        new("Production", services => services.AddSingleton<ILoggerFactory>(log), isOnPort: true, [("urls", "http://127.0.0.1:0"), .. settings]);

    /// <summary>The service with other tables to hold the engine against.</summary>
    public static Service With(IReadOnlyList<CheckTable> tables) => new("Production", services => services.AddSingleton(tables));

    /// <summary>The service with an issuer of tokens of the test's own.</summary>
    public static Service Trusting(Action<IServiceCollection> issuer, params (string Key, string Value)[] settings) =>
        new("Production", issuer, settings: settings);

    /// <summary>The service with another plan to be ready by.</summary>
    public static Service Planning(Func<FormPlan> known) => new("Production", services => services.AddSingleton(new KnownPlan(known)));

    public Task<HttpResponseMessage> Post(string path, string body) => Post(path, Encoding.UTF8.GetBytes(body));

    public Task<HttpResponseMessage> Post(string path, byte[] body, string mediaType = "application/json")
    {
        var content = new ByteArrayContent(body);
        content.Headers.ContentType = MediaTypeHeaderValue.Parse(mediaType);
        return Client.PostAsync(path, content);
    }

    public Task<JsonNode> Form(JsonNode request) => Answer("/v1/forms", request);

    public Task<JsonNode> Prediction(JsonNode request) => Answer("/v1/forms/prediction", request);

    public Task<JsonNode> Program(JsonNode request) => Answer("/v1/programs", request);

    public void Dispose()
    {
        Client.Dispose();
        if (!Shared.IsValueCreated || _factory != Shared.Value)
            _factory.Dispose();
    }

    public async Task<JsonNode> Answer(string path, JsonNode request)
    {
        using var response = await Post(path, request.ToJsonString());
        var text = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, text);
        return JsonNode.Parse(text)!;
    }

    private static WebApplicationFactory<Program> Factory(
        string environment, Action<IServiceCollection>? replace, params (string Key, string Value)[] settings) =>
        new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
        {
            host.UseEnvironment(environment);
            host.UseSetting("Serilog:MinimumLevel:Default", "Fatal");
            foreach (var (key, value) in settings)
                host.UseSetting(key, value);
            if (replace is not null)
                host.ConfigureTestServices(replace);
        });
}
