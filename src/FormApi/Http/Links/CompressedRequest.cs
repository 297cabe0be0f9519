namespace FormApi.Http.Links;

/// <summary>
/// Deflated bytes that know whether they ended where their stream ends: the decoder itself passes over a missing end, and over what follows
/// it.
/// </summary>
/// <param name="bytes">The bytes.</param>
internal sealed class CompressedRequest(ReadOnlyMemory<byte> bytes) : Stream
{
    // The decoder asks no more once its stream has ended, so the last few are given one by one.
    private const int Tail = 8;

    private int _taken;
    private bool _wasAskedForMore;

    /// <summary>Whether the stream ended with the last byte, neither before nor after it.</summary>
    public bool IsTakenWhole => _taken == bytes.Length && !_wasAskedForMore;

    /// <inheritdoc/>
    public override bool CanRead => true;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => false;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override int Read(Span<byte> buffer)
    {
        var left = bytes.Length - _taken;
        if (left == 0)
            _wasAskedForMore = true;
        var count = Math.Min(buffer.Length, left > Tail ? left - Tail : Math.Min(left, 1));
        bytes.Span.Slice(_taken, count).CopyTo(buffer);
        _taken += count;
        return count;
    }

    /// <inheritdoc/>
    public override void Flush() => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
