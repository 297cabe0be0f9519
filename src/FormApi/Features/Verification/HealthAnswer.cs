namespace FormApi.Features.Verification;

/// <summary>Whether the service is well.</summary>
/// <param name="Status"><c>live</c>, <c>started</c>, <c>ready</c> or <c>not-ready</c>.</param>
/// <param name="Engine">Version of the engine.</param>
internal sealed record HealthAnswer(string Status, string Engine);
