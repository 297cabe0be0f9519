using System.Net;
using System.Text;

namespace FormApi.Tests;

/// <summary>A body that is made line by line while it is sent, and counts what went out.</summary>
internal sealed class LineContent : HttpContent
{
    private readonly IAsyncEnumerable<string> _lines;
    private long _sent;

    public LineContent(IAsyncEnumerable<string> lines)
    {
        _lines = lines;
        Headers.ContentType = new("application/x-ndjson");
    }

    public LineContent(IEnumerable<string> lines)
        : this(lines.ToAsyncEnumerable())
    {
    }

    /// <summary>Bytes that the receiver has taken.</summary>
    public long Sent => Interlocked.Read(ref _sent);

    protected override Task SerializeToStreamAsync(Stream stream, TransportContext? context) =>
        SerializeToStreamAsync(stream, context, CancellationToken.None);

    protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context, CancellationToken cancellationToken)
    {
        await foreach (var line in _lines.WithCancellation(cancellationToken))
        {
            var bytes = Encoding.UTF8.GetBytes(line + "\n");
            await stream.WriteAsync(bytes, cancellationToken);
            await stream.FlushAsync(cancellationToken);
            Interlocked.Add(ref _sent, bytes.Length);
        }
    }

    protected override bool TryComputeLength(out long length)
    {
        length = 0;
        return false;
    }
}
