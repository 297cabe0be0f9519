using System.Buffers;
using System.IO.Pipelines;
using System.Runtime.CompilerServices;

namespace FormApi.Features.Batches;

/// <summary>One line as it came.</summary>
/// <param name="Number">Its number in the body, from 1.</param>
/// <param name="Utf8">Its text; null where it is longer than allowed.</param>
internal readonly record struct RawLine(int Number, ReadOnlyMemory<byte>? Utf8);

/// <summary>Cuts a stream into its lines; of one that is too long it keeps nothing.</summary>
/// <param name="mostBytes">Longest line [bytes].</param>
internal sealed class BatchLines(int mostBytes)
{
    private int _number;
    private bool _isTooLong;

    /// <summary>The lines that hold something.</summary>
    /// <param name="input">The stream.</param>
    /// <param name="cancellation">The caller has gone.</param>
    public async IAsyncEnumerable<RawLine> ReadAsync(PipeReader input, [EnumeratorCancellation] CancellationToken cancellation)
    {
        while (true)
        {
            var read = await input.ReadAsync(cancellation);
            var rest = read.Buffer;
            while (rest.PositionOf((byte)'\n') is { } end)
            {
                if (Take(rest.Slice(0, end)) is { } line)
                    yield return line;
                rest = rest.Slice(rest.GetPosition(1, end));
            }

            if (read.IsCompleted)
            {
                if (Take(rest) is { } last)
                    yield return last;
                input.AdvanceTo(rest.End);
                yield break;
            }

            if (rest.Length > mostBytes)
            {
                _isTooLong = true;
                input.AdvanceTo(rest.End);
            }
            else
            {
                input.AdvanceTo(rest.Start, rest.End);
            }
        }
    }

    // What stands before a line break, with what went before it.
    private RawLine? Take(ReadOnlySequence<byte> text)
    {
        _number++;
        if (_isTooLong || text.Length > mostBytes)
        {
            _isTooLong = false;
            return new(_number, null);
        }

        return IsBlank(text) ? null : new(_number, text.ToArray());
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
