using System.Buffers;
using System.Security.Cryptography;
using System.Text;

namespace FormApi.Http.Requests;

/// <summary>What names an answer: the same canonical request on the same engine gives the same bytes.</summary>
internal static class Fingerprint
{
    private static readonly byte[] EngineSuffix = Encoding.UTF8.GetBytes("\n" + EngineVersion.Current);

    /// <summary>SHA-256 over the canonical request and the engine's version.</summary>
    /// <param name="canonical">The normalised request in its canonical spelling.</param>
    /// <returns><c>sha256:</c> and 64 hexadecimal digits.</returns>
    public static string OfCanonical(ReadOnlySpan<byte> canonical)
    {
        var whole = ArrayPool<byte>.Shared.Rent(canonical.Length + EngineSuffix.Length);
        canonical.CopyTo(whole);
        EngineSuffix.CopyTo(whole, canonical.Length);
        Span<byte> digest = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(whole.AsSpan(0, canonical.Length + EngineSuffix.Length), digest);
        ArrayPool<byte>.Shared.Return(whole);
        return "sha256:" + Convert.ToHexStringLower(digest);
    }
}
