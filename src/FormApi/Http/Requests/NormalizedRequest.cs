using System.Buffers;
using FormApi.Http.Json;
using FormApi.Http.Units;

namespace FormApi.Http.Requests;

/// <summary>A request as its answer shows it: every default filled in, written once, and named.</summary>
/// <param name="Units">The caller's units.</param>
/// <param name="Json">The request as it goes into the answer.</param>
/// <param name="Canonical">The request in its one canonical spelling (RFC 8785).</param>
/// <param name="Fingerprint">SHA-256 over the canonical request and the engine's version.</param>
internal sealed record NormalizedRequest(UnitSystem Units, RawJson Json, ReadOnlyMemory<byte> Canonical, string Fingerprint)
{
    /// <summary>Writes a request.</summary>
    /// <typeparam name="T">Type of the request.</typeparam>
    /// <param name="request">The request with every default filled in.</param>
    public static NormalizedRequest Of<T>(T request)
        where T : IRequestBody<T>
    {
        var json = RawJson.Of(request, T.TypeInfo);
        var canonical = new ArrayBufferWriter<byte>(json.Utf8.Length);
        CanonicalJson.Write(json.Utf8.Span, canonical);
        return new(UnitSystem.Of(request.Units), json, canonical.WrittenMemory, Requests.Fingerprint.OfCanonical(canonical.WrittenSpan));
    }
}
