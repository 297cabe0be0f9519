namespace Forming.Results;

/// <summary>One caution that the request calls for.</summary>
/// <param name="Id">Stable id such as <c>sharp-edges</c>.</param>
/// <param name="Level">How serious.</param>
/// <param name="Text">The caution, in words; arguments are <see cref="Figure"/>s.</param>
public sealed record SafetyNote(string Id, SafetyLevel Level, FormattableString Text);
