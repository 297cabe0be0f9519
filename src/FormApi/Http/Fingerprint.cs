using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using FormApi.Operations;

namespace FormApi.Http;

/// <summary>What names an answer: the same canonical request on the same engine gives the same bytes.</summary>
internal static class Fingerprint
{
    private static readonly byte[] EngineSuffix = Encoding.UTF8.GetBytes("\n" + Engine.Version);

    /// <summary>SHA-256 over the canonical request and the engine's version.</summary>
    /// <param name="request">The normalised request as JSON.</param>
    /// <returns><c>sha256:</c> and 64 hexadecimal digits.</returns>
    public static string Of(ReadOnlyMemory<byte> request)
    {
        var canonical = new ArrayBufferWriter<byte>(request.Length + EngineSuffix.Length);
        CanonicalJson.Write(request, canonical);
        canonical.Write(EngineSuffix);
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(canonical.WrittenSpan, hash);
        return "sha256:" + Convert.ToHexStringLower(hash);
    }
}
