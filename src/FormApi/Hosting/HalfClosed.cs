using System.IO.Pipelines;
using FormApi.Http;
using Microsoft.AspNetCore.Connections;

namespace FormApi.Hosting;

/// <summary>
/// Callers who send all they have to say, close their side and then read (RFC 9112, section 9.6). The server takes that for a caller who
/// has gone: from the connection's token, and from an end that comes with the last bytes. Here the token waits a while, and the end comes
/// by itself, once those bytes have been looked at. A caller who has really gone is found out when nobody takes the answer.
/// </summary>
internal sealed class HalfClosed : PipeReader
{
    private readonly PipeReader _input;
    private ReadResult _given;
    private bool _isOut;
    private bool _wasSeenToTheEnd;

    private HalfClosed(PipeReader input) => _input = input;

    /// <summary>Lets a connection whose caller has closed its side live on for a while.</summary>
    /// <param name="connection">The connection.</param>
    /// <param name="limits">How long.</param>
    /// <returns>What the caller sends.</returns>
    public static PipeReader Kept(ConnectionContext connection, Limits limits)
    {
        var gone = new CancellationTokenSource();
        connection.ConnectionClosed.Register(() => gone.CancelAfter(TimeSpan.FromSeconds(limits.HalfClosedSeconds)));
        connection.ConnectionClosed = gone.Token;
        return new HalfClosed(connection.Transport.Input);
    }

    /// <inheritdoc/>
    public override async ValueTask<ReadResult> ReadAsync(CancellationToken cancellationToken = default) =>
        IsOver ? _given : Given(await _input.ReadAsync(cancellationToken));

    /// <inheritdoc/>
    public override bool TryRead(out ReadResult result)
    {
        if (IsOver)
        {
            result = _given;
            return true;
        }

        var hasRead = _input.TryRead(out result);
        if (hasRead)
            result = Given(result);
        return hasRead;
    }

    /// <inheritdoc/>
    public override void AdvanceTo(SequencePosition consumed) => AdvanceTo(consumed, consumed);

    /// <inheritdoc/>
    public override void AdvanceTo(SequencePosition consumed, SequencePosition examined)
    {
        _isOut = false;
        _wasSeenToTheEnd = examined.Equals(_given.Buffer.End);
        _input.AdvanceTo(consumed, examined);
    }

    /// <inheritdoc/>
    public override void CancelPendingRead() => _input.CancelPendingRead();

    /// <inheritdoc/>
    public override void Complete(Exception? exception = null) => _input.Complete(exception);

    /// <inheritdoc/>
    public override ValueTask CompleteAsync(Exception? exception = null) => _input.CompleteAsync(exception);

    // After an unexpected end the server asks again, and has not given the last bytes back.
    private bool IsOver => _isOut && _given.IsCompleted;

    // What was seen to the end and is asked for again lacks something, so the end is told at once.
    private ReadResult Given(ReadResult read)
    {
        var endsLater = read.IsCompleted && !read.Buffer.IsEmpty && !_wasSeenToTheEnd;
        (_given, _isOut) = (endsLater ? new(read.Buffer, read.IsCanceled, isCompleted: false) : read, true);
        return _given;
    }
}
