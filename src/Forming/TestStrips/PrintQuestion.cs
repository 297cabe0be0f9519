using Forming.Materials;

namespace Forming.TestStrips;

/// <summary>What is asked of strips judged by eye.</summary>
/// <param name="Material">Their material.</param>
/// <param name="Strips">The strips, at least one.</param>
public sealed record PrintQuestion(Material Material, IReadOnlyList<PrintStrip> Strips);
