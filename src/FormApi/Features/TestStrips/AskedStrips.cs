using FormApi.Http;

namespace FormApi.Features.TestStrips;

/// <summary>What goes from a request into its answer.</summary>
/// <param name="Units">The caller's units.</param>
/// <param name="Request">The request with every default shown, as JSON.</param>
/// <param name="Fingerprint">Fingerprint of request and engine.</param>
internal sealed record AskedStrips(UnitSystem Units, RawJson Request, string Fingerprint);
