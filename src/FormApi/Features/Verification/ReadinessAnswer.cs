namespace FormApi.Features.Verification;

/// <summary>Whether the service may be sent work.</summary>
/// <param name="Status"><c>ready</c> or <c>not-ready</c>.</param>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Checked">Number of check values that the engine recomputed.</param>
/// <param name="Failed">What failed: ids of check values as in <c>/v1/verification</c>, <c>known-plan</c> for the plan; empty when
/// ready.</param>
internal sealed record ReadinessAnswer(string Status, string Engine, int Checked, string[] Failed);
