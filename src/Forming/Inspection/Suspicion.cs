namespace Forming.Inspection;

/// <summary>A measurement that can be calculated with but is hard to believe.</summary>
/// <param name="Subject">Which, as a path of contract field names.</param>
/// <param name="Code">Stable code.</param>
/// <param name="Reason">Why; its arguments are figures.</param>
public sealed record Suspicion(string Subject, string Code, FormattableString Reason);
