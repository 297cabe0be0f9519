using System.IO.Compression;
using System.Net.Http.Headers;
using System.Text;

namespace FormApi.Tests;

/// <summary>Bodies that go compressed.</summary>
internal static class Packing
{
    /// <summary>A compressed body.</summary>
    /// <param name="text">What it holds.</param>
    /// <param name="encoding">How it is compressed.</param>
    /// <param name="media">Its media type.</param>
    public static ByteArrayContent Of(string text, string encoding, string media)
    {
        using var packed = new MemoryStream();
        using (Stream pack = encoding == "br" ? new BrotliStream(packed, CompressionLevel.Fastest) : new GZipStream(packed, CompressionLevel.Fastest))
            pack.Write(Encoding.UTF8.GetBytes(text));
        var content = new ByteArrayContent(packed.ToArray());
        content.Headers.ContentType = new MediaTypeHeaderValue(media);
        content.Headers.ContentEncoding.Add(encoding);
        return content;
    }

    /// <summary>The text in a compressed answer.</summary>
    /// <param name="content">The answer.</param>
    /// <param name="encoding">How it is compressed.</param>
    public static async Task<string> Unpack(HttpContent content, string encoding)
    {
        await using var packed = await content.ReadAsStreamAsync();
        await using Stream unpacked = encoding == "br" ? new BrotliStream(packed, CompressionMode.Decompress) : new GZipStream(packed, CompressionMode.Decompress);
        using var reader = new StreamReader(unpacked, Encoding.UTF8);
        return await reader.ReadToEndAsync();
    }
}
