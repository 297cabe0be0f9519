using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using PdfSharp.Pdf;

namespace Forming.Drawing.Pdf;

/// <summary>A document as bytes that depend on nothing but what it shows.</summary>
/// <remarks>
/// The library stamps the time, random ids and random font tags. They are replaced by others of the same length, so that no offset in
/// the file moves: dates by a fixed one, ids by a hash of the rest, tags by the font's weight.
/// </remarks>
internal static partial class PdfBytes
{
    /// <summary>The date in a document [UTC].</summary>
    private static readonly DateTime Epoch = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Writes a document.</summary>
    /// <param name="document">The document.</param>
    /// <param name="stream">Where to write; stays open.</param>
    public static void Write(PdfDocument document, Stream stream)
    {
        document.Info.CreationDate = Epoch;
        using var buffer = new MemoryStream();
        document.Save(buffer, closeStream: false);
        var bytes = buffer.GetBuffer().AsSpan(0, (int)buffer.Length);
        var text = Encoding.Latin1.GetString(bytes);
        foreach (var date in Dates().EnumerateMatches(text))
            Fill(bytes.Slice(date.Index, date.Length), "20000101000000"u8, (byte)'0');
        foreach (var tag in FontTags().EnumerateMatches(text))
        {
            var isBold = text.AsSpan(tag.Index, tag.Length).EndsWith("Bold", StringComparison.Ordinal);
            (isBold ? "BBBBBB"u8 : "AAAAAA"u8).CopyTo(bytes[(tag.Index + 1)..]);
        }

        foreach (var id in Ids().EnumerateMatches(text))
            Fill(bytes.Slice(id.Index, id.Length), [], (byte)'0');
        var hash = Encoding.ASCII.GetBytes(Convert.ToHexString(SHA256.HashData(bytes))[..32]);
        foreach (var id in Ids().EnumerateMatches(text))
            Fill(bytes.Slice(id.Index, id.Length), hash, (byte)'0');
        stream.Write(bytes);
    }

    // Digits and letters only: dashes, colons and what is around them keep their places.
    private static void Fill(Span<byte> place, ReadOnlySpan<byte> with, byte then)
    {
        var next = 0;
        foreach (ref var digit in place)
        {
            if (char.IsAsciiHexDigit((char)digit))
                digit = next < with.Length ? with[next++] : then;
        }
    }

    [GeneratedRegex(@"(?<=Date\(D:)\d{14}|(?<=(?:Create|Modify|Metadata)Date>)\d{4}-\d\d-\d\dT[\d:]{8}", RegexOptions.CultureInvariant)]
    private static partial Regex Dates();

    [GeneratedRegex(@"/[A-Z]{6}\+Liberation#20Sans(,Bold)?", RegexOptions.CultureInvariant)]
    private static partial Regex FontTags();

    [GeneratedRegex(@"(?<=ID>uuid:)[0-9a-fA-F-]{36}|(?<=/ID\[<)[0-9A-F]{32}|(?<=/ID\[<[0-9A-F]{32}><)[0-9A-F]{32}", RegexOptions.CultureInvariant)]
    private static partial Regex Ids();
}
