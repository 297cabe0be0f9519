using System.Buffers;
using System.IO.Pipelines;
using System.Runtime.CompilerServices;
using FormApi.Http.Requests;

namespace FormApi.Features.Batches;

/// <summary>One line as received.</summary>
/// <param name="Number">Its number in the body, from 1.</param>
/// <param name="Utf8">Its text; null where it is longer than allowed.</param>
internal readonly record struct RawLine(int Number, ReadOnlyMemory<byte>? Utf8);

/// <summary>Cuts a stream into its lines; of one that is too long it keeps nothing.</summary>
/// <param name="mostBytes">Longest line [bytes].</param>
/// <param name="longestSilence">How long it waits for more.</param>
internal sealed class BatchLines(int mostBytes, TimeSpan longestSilence)
{
    private bool _isTooLong;

    /// <summary>Number of the line that is being read, from 1.</summary>
    public int Number { get; private set; } = 1;

    /// <summary>The lines that hold something.</summary>
    /// <param name="input">The stream.</param>
    /// <param name="cancellation">The caller has gone.</param>
    /// <exception cref="TimeoutException">Nothing more arrived.</exception>
    public async IAsyncEnumerable<RawLine> ReadAsync(PipeReader input, [EnumeratorCancellation] CancellationToken cancellation)
    {
        while (true)
        {
            var read = await input.ReadWithinAsync(longestSilence, cancellation);
            var rest = read.Buffer;
            try
            {
                while (rest.PositionOf((byte)'\n') is { } end)
                {
                    var line = Take(rest.Slice(0, end));
                    rest = rest.Slice(rest.GetPosition(1, end));
                    if (line is { } whole)
                        yield return whole;
                }

                if (rest.Length > mostBytes)
                {
                    _isTooLong = true;
                    rest = rest.Slice(rest.End);
                }

                if (read.IsCompleted)
                {
                    var last = Take(rest);
                    rest = rest.Slice(rest.End);
                    if (last is { } whole)
                        yield return whole;
                    yield break;
                }
            }
            finally
            {
                // Also where nobody wants the next line: the server can only leave the rest unread if it is given back.
                input.AdvanceTo(rest.Start, rest.End);
            }
        }
    }

    // What is before a line break, with what was read before it.
    private RawLine? Take(ReadOnlySequence<byte> text)
    {
        var number = Number++;
        if (_isTooLong || text.Length > mostBytes)
        {
            _isTooLong = false;
            return new(number, null);
        }

        return IsBlank(text) ? null : new(number, text.ToArray());
    }

    private static bool IsBlank(ReadOnlySequence<byte> text)
    {
        foreach (var piece in text)
        {
            if (piece.Span.ContainsAnyExcept(" \t\r"u8))
                return false;
        }

        return true;
    }
}
