using System.Text;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Kiota.Abstractions.Authentication;
using Microsoft.Kiota.Abstractions.Serialization;
using Microsoft.Kiota.Http.HttpClientLibrary;
using Microsoft.Kiota.Serialization.Json;

namespace FormApi.Client.Tests;

/// <summary>The generated client, calling the real service through its whole pipeline, and what went over the wire.</summary>
public sealed class Caller : IDisposable
{
    private readonly WebApplicationFactory<Program> _factory;
    private readonly Recorder _recorder = new();
    private readonly HttpClient _http;
    private readonly HttpClientRequestAdapter _adapter;

    public Caller()
    {
        _factory = new WebApplicationFactory<Program>().WithWebHostBuilder(host =>
        {
            host.UseEnvironment("Production");
            host.UseSetting("Serilog:MinimumLevel:Default", "Fatal");
        });
        _http = _factory.CreateDefaultClient(_recorder);
        _adapter = new(new AnonymousAuthenticationProvider(), httpClient: _http)
        {
            BaseUrl = _http.BaseAddress!.ToString().TrimEnd('/'),
        };
        Client = new(_adapter);
    }

    public FormApiClient Client { get; }

    /// <summary>What the client calls the service with.</summary>
    public HttpClient Http => _http;

    /// <summary>The body that the client sent last.</summary>
    public JsonNode Sent => JsonNode.Parse(_recorder.Sent)!;

    /// <summary>The body that the service answered last.</summary>
    public JsonNode Answered => JsonNode.Parse(_recorder.Answered)!;

    /// <summary>What the client makes of a model when it is written again.</summary>
    public static JsonNode Written(IParsable model)
    {
        using var writer = new JsonSerializationWriter();
        writer.WriteObjectValue(null, model);
        using var content = writer.GetSerializedContent();
        return JsonNode.Parse(content)!;
    }

    /// <summary>The contract, as the service serves it.</summary>
    public Task<string> Contract() => _http.GetStringAsync("/openapi/v1.json");

    public void Dispose()
    {
        _adapter.Dispose();
        _http.Dispose();
        _factory.Dispose();
    }

    private sealed class Recorder : DelegatingHandler
    {
        public string Sent { get; private set; } = "";

        public string Answered { get; private set; } = "";

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            Sent = request.Content is { } sent ? Encoding.UTF8.GetString(await sent.ReadAsByteArrayAsync(cancellationToken)) : "";
            var response = await base.SendAsync(request, cancellationToken);
            await response.Content.LoadIntoBufferAsync(cancellationToken);
            Answered = await response.Content.ReadAsStringAsync(cancellationToken);
            return response;
        }
    }
}
