using Forming.Facets;

namespace Forming.Prediction;

/// <summary>Whether the facets show at a finish.</summary>
/// <param name="Finish">The finish with its limits.</param>
/// <param name="Shows">Whether a facet passes a limit, or null where it cannot be told.</param>
public sealed record FinishVerdict(Finish Finish, bool? Shows);
