using System.Buffers;
using System.Text.Json;

namespace FormApi.Http.Json;

/// <summary>JSON that leaves only once it is whole: what fails half-way while it is written leaves nothing behind.</summary>
internal sealed class WholeAnswer : IBufferWriter<byte>, IDisposable
{
    // What most answers take.
    private const int UsualBytes = 16 * 1024;

    private byte[] _bytes = ArrayPool<byte>.Shared.Rent(UsualBytes);
    private int _length;

    private WholeAnswer()
    {
    }

    /// <summary>Writes JSON, then sends it.</summary>
    /// <param name="context">The request.</param>
    /// <param name="write">Writes it.</param>
    public static async Task SendAsync(HttpContext context, Action<Utf8JsonWriter> write)
    {
        using var whole = new WholeAnswer();
        using (var writer = new Utf8JsonWriter(whole, WireJson.Writing))
            write(writer);
        await context.Response.BodyWriter.WriteAsync(whole._bytes.AsMemory(0, whole._length), context.RequestAborted);
    }

    /// <inheritdoc/>
    public void Advance(int count) => _length += count;

    /// <inheritdoc/>
    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return _bytes.AsMemory(_length);
    }

    /// <inheritdoc/>
    public Span<byte> GetSpan(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return _bytes.AsSpan(_length);
    }

    /// <inheritdoc/>
    public void Dispose() => ArrayPool<byte>.Shared.Return(_bytes);

    private void MakeRoom(int wanted)
    {
        var least = _length + Math.Max(wanted, 1);
        if (least <= _bytes.Length)
            return;
        var larger = ArrayPool<byte>.Shared.Rent(Math.Max(least, 2 * _bytes.Length));
        _bytes.AsSpan(0, _length).CopyTo(larger);
        ArrayPool<byte>.Shared.Return(_bytes);
        _bytes = larger;
    }
}
