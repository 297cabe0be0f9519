using System.Diagnostics;

namespace FormApi.Http;

/// <summary>What a request leaves behind for the log: its trace id, and the fingerprint of its answer.</summary>
internal static class RequestTrace
{
    // Where an endpoint leaves the fingerprint of its answer.
    private static readonly object FingerprintKey = new();

    /// <summary>The trace id of a request: the caller's where it sent a <c>traceparent</c>.</summary>
    /// <param name="context">The request.</param>
    public static string IdOf(HttpContext context) =>
        Activity.Current?.TraceId.ToHexString() ?? context.TraceIdentifier;

    /// <summary>Leaves a fingerprint for the log.</summary>
    /// <param name="context">The request.</param>
    /// <param name="fingerprint">The fingerprint.</param>
    public static void Remember(HttpContext context, string fingerprint) => context.Items[FingerprintKey] = fingerprint;

    /// <summary>The fingerprint that was left, or null.</summary>
    /// <param name="context">The request.</param>
    public static string? FingerprintOf(HttpContext context) => (string?)context.Items[FingerprintKey];
}
