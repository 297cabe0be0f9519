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
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(canonical);
        hash.AppendData(EngineSuffix);
        Span<byte> digest = stackalloc byte[SHA256.HashSizeInBytes];
        hash.GetHashAndReset(digest);
        return "sha256:" + Convert.ToHexStringLower(digest);
    }
}
