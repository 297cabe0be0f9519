using System.Collections.Concurrent;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Logging;

namespace FormApi.Tests;

/// <summary>A collector of what services tell of themselves: keeps the bytes that it is sent.</summary>
public sealed class Collector : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly ConcurrentQueue<(string Path, string Body)> _received = [];

    private Collector()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        _app = builder.Build();
        _app.Urls.Add("http://127.0.0.1:0");
        _app.Run(async context =>
        {
            using var body = new MemoryStream();
            await context.Request.Body.CopyToAsync(body);
            // Texts lie in it as they are.
            _received.Enqueue((context.Request.Path, Encoding.Latin1.GetString(body.ToArray())));
        });
    }

    public string Address => _app.Urls.First();

    public IEnumerable<string> Paths => _received.Select(one => one.Path).Distinct();

    public static async Task<Collector> StartAsync()
    {
        var collector = new Collector();
        await collector._app.StartAsync();
        return collector;
    }

    public string Received(string path) => string.Concat(_received.Where(one => one.Path == path).Select(one => one.Body));

    public ValueTask DisposeAsync() => _app.DisposeAsync();
}
