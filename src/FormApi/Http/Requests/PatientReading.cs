using System.IO.Pipelines;

namespace FormApi.Http.Requests;

/// <summary>Reads from a caller who may be slow.</summary>
internal static class PatientReading
{
    /// <summary>What comes next, waited for so long at most.</summary>
    /// <param name="reader">The reader; left so that the server can read on where it gives up.</param>
    /// <param name="longest">How long it waits.</param>
    /// <param name="gone">The caller has gone.</param>
    /// <exception cref="TimeoutException">Nothing came.</exception>
    /// <exception cref="OperationCanceledException">The caller has gone.</exception>
    public static async ValueTask<ReadResult> ReadWithinAsync(this PipeReader reader, TimeSpan longest, CancellationToken gone)
    {
        // What is here already needs no clock.
        if (reader.TryRead(out var here))
            return here;
        if (longest <= TimeSpan.Zero)
            throw new TimeoutException();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(gone);
        patience.CancelAfter(longest);
        // Cancelling by token would leave the server's reader amid a read, and a stack trace in its log: so neither the clock nor a caller
        // who has gone ends a read that way.
        await using var late = patience.Token.UnsafeRegister(static reader => ((PipeReader)reader!).CancelPendingRead(), reader);
        var read = await reader.ReadAsync(CancellationToken.None);
        if (!read.IsCanceled)
            return read;
        reader.AdvanceTo(read.Buffer.Start);
        gone.ThrowIfCancellationRequested();
        throw new TimeoutException();
    }
}
