using System.Diagnostics;
using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using FormApi.Http.Problems;

namespace FormApi.Hosting;

/// <summary>
/// Gives a body to what the server refuses before the service sees it, such as a zero character in a path: it answers that by a bare head,
/// and asks nobody. Everything else passes untouched.
/// </summary>
internal sealed class ServerRefusals : PipeWriter
{
    private const string Version = "HTTP/1.1 ";
    private const int LongestHead = 256;

    private readonly PipeWriter _output;
    private readonly Serilog.ILogger _logger;
    private Memory<byte> _room;

    private ServerRefusals(PipeWriter output, Serilog.ILogger logger) => (_output, _logger) = (output, logger);

    /// <summary>A connection whose bare refusals say why.</summary>
    /// <param name="input">What the caller sends.</param>
    /// <param name="output">Where it is answered.</param>
    /// <param name="logger">Where they are noted.</param>
    public static IDuplexPipe Explained(PipeReader input, PipeWriter output, Serilog.ILogger logger) =>
        new PipePair(input, new ServerRefusals(output, logger));

    /// <inheritdoc/>
    public override bool CanGetUnflushedBytes => _output.CanGetUnflushedBytes;

    /// <inheritdoc/>
    public override long UnflushedBytes => _output.UnflushedBytes;

    /// <inheritdoc/>
    public override Memory<byte> GetMemory(int sizeHint = 0) => _room = _output.GetMemory(sizeHint);

    /// <inheritdoc/>
    public override Span<byte> GetSpan(int sizeHint = 0) => GetMemory(sizeHint).Span;

    /// <inheritdoc/>
    public override void Advance(int bytes)
    {
        if (bytes < LongestHead && StatusOfBare(_room.Span[..bytes]) is { } status)
            bytes = Explain(status, bytes);
        _room = _room[bytes..];
        _output.Advance(bytes);
    }

    /// <inheritdoc/>
    public override ValueTask<FlushResult> FlushAsync(CancellationToken cancellationToken = default) =>
        _output.FlushAsync(cancellationToken);

    /// <inheritdoc/>
    public override void CancelPendingFlush() => _output.CancelPendingFlush();

    /// <inheritdoc/>
    public override void Complete(Exception? exception = null) => _output.Complete(exception);

    /// <inheritdoc/>
    public override ValueTask CompleteAsync(Exception? exception = null) => _output.CompleteAsync(exception);

    // A head of a refusal without a body, after which the connection closes: no answer of the service's own looks like it.
    private static int? StatusOfBare(ReadOnlySpan<byte> head) =>
        head.StartsWith("HTTP/1.1 4"u8) && head.EndsWith("\r\n\r\n"u8)
        && head.IndexOf("\r\nContent-Length: 0\r\n"u8) > 0 && head.IndexOf("\r\nConnection: close\r\n"u8) > 0 && head.IndexOf("\r\nContent-Type:"u8) < 0
            ? int.Parse(head.Slice(Version.Length, 3), NumberStyles.None, CultureInfo.InvariantCulture)
            : null;

    private int Explain(int status, int bytes)
    {
        var traceId = ActivityTraceId.CreateRandom().ToHexString();
        // Headers that come too slowly are no body.
        var alike = status == StatusCodes.Status408RequestTimeout ? ProblemKinds.BadRequest : ProblemKinds.OfStatus(status);
        var kind = alike with { Status = status };
        var body = JsonSerializer.SerializeToUtf8Bytes(
            new ProblemResult(kind, kind.Text).ToProblem("/", traceId), ProblemJson.Default.Problem);
        var head = Encoding.ASCII.GetString(_room.Span[..bytes]).Replace(
            "Content-Length: 0\r\n",
            string.Create(CultureInfo.InvariantCulture, $"Content-Type: {ProblemResult.MediaType}\r\nCache-Control: no-store\r\nContent-Length: {body.Length}\r\n"),
            StringComparison.Ordinal);
        if (head.Length + body.Length > _room.Length)
            return bytes;
        Encoding.ASCII.GetBytes(head, _room.Span);
        body.CopyTo(_room.Span[head.Length..]);
        _logger.Information("The server refused a request unread: {Status} {TraceId}", status, traceId);
        return head.Length + body.Length;
    }

    private sealed record PipePair(PipeReader Input, PipeWriter Output) : IDuplexPipe;
}
