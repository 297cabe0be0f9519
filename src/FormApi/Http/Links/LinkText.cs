using System.Buffers;
using System.Buffers.Text;
using System.IO.Compression;
using System.Text;
using FormApi.Http.Problems;

namespace FormApi.Http.Links;

/// <summary>A request inside a link: its JSON, deflated (RFC 1951), in base64url without padding (RFC 4648).</summary>
internal static class LinkText
{
    /// <summary>Longest text of a link.</summary>
    public const int Longest = 4096;

    // The decoder would let white space and padding pass: one request in many spellings.
    private static readonly SearchValues<char> Alphabet = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_");

    /// <summary>The text of a request, or null where it would be longer than a link may be.</summary>
    /// <param name="json">The request.</param>
    /// <param name="level">How hard to press it.</param>
    public static string? Of(ReadOnlySpan<byte> json, CompressionLevel level = CompressionLevel.Fastest)
    {
        var compressed = new MemoryStream(json.Length);
        using (var deflate = new DeflateStream(compressed, level, leaveOpen: true))
            deflate.Write(json);
        return Base64Url.GetEncodedLength((int)compressed.Length) <= Longest
            ? Base64Url.EncodeToString(compressed.GetBuffer().AsSpan(0, (int)compressed.Length))
            : null;
    }

    /// <summary>Reads the request out of a link, whatever somebody may have put there.</summary>
    /// <param name="text">The text of the link.</param>
    /// <param name="mostBytes">Most bytes it may hold once inflated.</param>
    /// <param name="json">The request; empty with a problem.</param>
    /// <returns>The problem, or null.</returns>
    public static ProblemResult? Read(string text, int mostBytes, out ReadOnlyMemory<byte> json)
    {
        json = default;
        if (text.Length > Longest)
            return new(ProblemKinds.LinkTooLong, $"The link has {text.Length} characters; {Longest} are read.");
        var compressed = new byte[Base64Url.GetMaxDecodedLength(text.Length)];
        if (text.AsSpan().ContainsAnyExcept(Alphabet)
            || Base64Url.DecodeFromUtf8(Encoding.ASCII.GetBytes(text), compressed, out _, out var length) != OperationStatus.Done)
        {
            return new(ProblemKinds.BrokenLink, "The link is not base64url.");
        }

        return Inflate(compressed.AsMemory(0, length), mostBytes, out json);
    }

    private static ProblemResult? Inflate(ReadOnlyMemory<byte> compressed, int mostBytes, out ReadOnlyMemory<byte> json)
    {
        json = default;
        // A byte more than allowed shows that a link goes on.
        var room = ArrayPool<byte>.Shared.Rent(mostBytes + 1);
        try
        {
            var source = new CompressedRequest(compressed);
            using var inflate = new DeflateStream(source, CompressionMode.Decompress);
            var length = inflate.ReadAtLeast(room.AsSpan(0, mostBytes + 1), mostBytes + 1, throwOnEndOfStream: false);
            if (length > mostBytes)
                return new(ProblemKinds.TooLarge, $"The link holds more than {mostBytes} bytes once inflated; the setting is {Limits.Section}:{nameof(Limits.LinkBytes)}.");
            if (!source.IsTakenWhole)
                return new(ProblemKinds.BrokenLink, "The link was cut, or something was added to it.");
            json = room.AsSpan(0, length).ToArray();
            return null;
        }
        catch (InvalidDataException)
        {
            return new(ProblemKinds.BrokenLink, "The link is not deflated.");
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(room);
        }
    }
}
