using System.Buffers;
using System.Collections.Concurrent;
using System.IO.Pipelines;
using System.Threading.Channels;
using FormApi.Http;
using FormApi.Http.Problems;

namespace FormApi.Features.Batches;

/// <summary>
/// Lines in, answers out in the same order, on every core, in constant memory: a bounded number of lines is under way,
/// so that whoever is slowest (the caller who sends, the calculation, the caller who reads) slows the others down.
/// </summary>
/// <param name="worker">Answers single lines.</param>
/// <param name="places">Places for batches.</param>
/// <param name="limits">The limits.</param>
/// <param name="stopping">The service is about to stop: no more lines are begun.</param>
internal sealed class BatchStream(BatchWorker worker, BatchPlaces places, Limits limits, CancellationToken stopping) : IDisposable
{
    // Enough that quick lines are ready behind a slow one.
    private static readonly int MostUnderWay = 16 * Environment.ProcessorCount;

    // The lines of all batches share as many threads as there are cores. Were they to take all threads there are, whatever waits for
    // the network would wait behind slow lines: other callers, and the notice that this client disconnected.
    private static readonly TaskFactory Cores = CoreThreads.New();

    // What goes out at once while the next answer is ready already [bytes].
    private const int Portion = 64 * 1024;

    private readonly BatchPlace _place = new(places);

    private readonly ConcurrentBag<ArrayBufferWriter<byte>> _spare = [];

    private readonly Channel<Task<ArrayBufferWriter<byte>>> _underWay = Channel.CreateBounded<Task<ArrayBufferWriter<byte>>>(
        new BoundedChannelOptions(MostUnderWay) { SingleReader = true, SingleWriter = true });

    private bool _isRefused;

    /// <summary>Answers all lines.</summary>
    /// <param name="input">The lines.</param>
    /// <param name="output">Where the answers go.</param>
    /// <param name="cancellation">The caller has gone.</param>
    /// <returns>Whether there was a place for it; where not, nothing is written.</returns>
    /// <exception cref="TimeoutException">The caller does not read.</exception>
    public async Task<bool> RunAsync(PipeReader input, PipeWriter output, CancellationToken cancellation)
    {
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var reading = ReadAsync(input, ending.Token);
        try
        {
            await WriteAsync(output, ending.Token);
        }
        finally
        {
            // Whatever ended the writing ends the reading, and no line is left running.
            await ending.CancelAsync();
            await reading.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            await DrainAsync();
        }

        await reading;
        return !_isRefused;
    }

    /// <inheritdoc/>
    public void Dispose() => _place.Dispose();

    private async Task ReadAsync(PipeReader input, CancellationToken cancellation)
    {
        try
        {
            var lines = new BatchLines(limits.BatchLineBytes, TimeSpan.FromSeconds(limits.UnsentSeconds));
            using var reading = CancellationTokenSource.CreateLinkedTokenSource(cancellation, stopping);
            try
            {
                await ReadAsync(lines, input, reading.Token, cancellation);
            }
            catch (OperationCanceledException) when (stopping.IsCancellationRequested && !cancellation.IsCancellationRequested)
            {
                await EndAsync(lines.Number, cancellation);
            }
            catch (IOException) when (!cancellation.IsCancellationRequested)
            {
                await BeginAsync(lines.Number, Broken, cancellation);
            }
            catch (TimeoutException)
            {
                await BeginAsync(lines.Number, Unsent(), cancellation);
            }

            _underWay.Writer.Complete();
        }
        catch (Exception broken)
        {
            _underWay.Writer.Complete(broken);
            throw;
        }
    }

    private async Task ReadAsync(BatchLines lines, PipeReader input, CancellationToken reading, CancellationToken cancellation)
    {
        var asked = 0;
        await foreach (var line in lines.ReadAsync(input, reading))
        {
            if (stopping.IsCancellationRequested)
            {
                await EndAsync(line.Number, cancellation);
                return;
            }

            if (asked++ == limits.BatchLines)
            {
                await BeginAsync(line.Number, TooMany(), cancellation);
                return;
            }

            _isRefused = !(line.Utf8 is { } utf8
                ? await BeginAsync(line.Number, utf8, cancellation)
                : await BeginAsync(line.Number, TooLong(), cancellation));
            if (_isRefused)
                return;
        }
    }

    // Room first: whatever is begun is under way, where its end is waited for.
    private async ValueTask<bool> BeginAsync(int number, ReadOnlyMemory<byte> utf8, CancellationToken cancellation)
    {
        if (!await _place.TryHoldAsync(cancellation))
            return false;
        await _underWay.Writer.WaitToWriteAsync(cancellation);
        _underWay.Writer.TryWrite(Cores.StartNew(
            () =>
            {
                var buffer = Spare();
                worker.Answer(number, utf8, buffer, cancellation);
                return buffer;
            },
            cancellation));
        return true;
    }

    // Every line before it is answered first; a batch without a place is refused whole.
    private async Task EndAsync(int number, CancellationToken cancellation) =>
        _isRefused = !await BeginAsync(number, new(ProblemKinds.Stopping, "The service is about to stop. This line and those after it were not read."), cancellation, number);

    private async ValueTask<bool> BeginAsync(int number, ProblemResult refused, CancellationToken cancellation, int? resumeFrom = null)
    {
        if (!await _place.TryHoldAsync(cancellation))
            return false;
        var buffer = Spare();
        worker.Refuse(number, refused, buffer, resumeFrom);
        await _underWay.Writer.WriteAsync(Task.FromResult(buffer), cancellation);
        return true;
    }

    private async Task WriteAsync(PipeWriter output, CancellationToken cancellation)
    {
        var waiting = 0L;
        while (await _underWay.Reader.WaitToReadAsync(cancellation))
        {
            // It stays under way until it is out.
            var answered = 0;
            while (_underWay.Reader.TryPeek(out var answer))
            {
                if (waiting > 0 && !answer.IsCompleted)
                    waiting = await FlushAsync(output, cancellation);
                var buffer = await answer;
                waiting = await WriteAsync(output, buffer.WrittenMemory, waiting, cancellation);
                _underWay.Reader.TryRead(out _);
                buffer.ResetWrittenCount();
                _spare.Add(buffer);
                answered++;
            }

            waiting = await FlushAsync(output, cancellation);
            _place.Release(answered);
        }
    }

    // In portions, so that what a caller has to take in time does not grow with an answer.
    private async ValueTask<long> WriteAsync(PipeWriter output, ReadOnlyMemory<byte> answer, long waiting, CancellationToken cancellation)
    {
        while (answer.Length > 0)
        {
            var portion = answer[..Math.Min(Portion, answer.Length)];
            output.Write(portion.Span);
            answer = answer[portion.Length..];
            waiting += portion.Length;
            if (waiting >= Portion)
                waiting = await FlushAsync(output, cancellation);
        }

        return waiting;
    }

    private async ValueTask<long> FlushAsync(PipeWriter output, CancellationToken cancellation)
    {
        var flush = output.FlushAsync(cancellation);
        if (!flush.IsCompletedSuccessfully)
            await flush.AsTask().WaitAsync(TimeSpan.FromSeconds(limits.UnreadSeconds), cancellation);
        return 0;
    }

    private async Task DrainAsync()
    {
        while (_underWay.Reader.TryRead(out var left))
            await ((Task)left).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }

    private ArrayBufferWriter<byte> Spare() => _spare.TryTake(out var spare) ? spare : new(Portion);

    private static ProblemResult Broken { get; } = new(
        ProblemKinds.BadRequest, "The body breaks the rules of HTTP here. This line and those after it were not read.");

    private ProblemResult Unsent() => new(
        ProblemKinds.BadRequest,
        $"Nothing arrived for {limits.UnsentSeconds} s; the setting is {Limits.Section}:{nameof(Limits.UnsentSeconds)}. This line and those after it were not read.");

    private ProblemResult TooLong() => new(
        ProblemKinds.TooLarge, $"A line may have {limits.BatchLineBytes} bytes; the setting is {Limits.Section}:{nameof(Limits.BatchLineBytes)}.");

    private ProblemResult TooMany() => new(
        ProblemKinds.TooLarge,
        $"A batch may have {limits.BatchLines} lines; the setting is {Limits.Section}:{nameof(Limits.BatchLines)}. This line and those after it were not read.");
}
