namespace Forming.Results;

/// <summary>What a headline figure rests on.</summary>
/// <param name="Quantity">The figure, by its name in the answer.</param>
/// <param name="Method">The formula or method, in words.</param>
/// <param name="Source">The published text, or what stands in its place.</param>
/// <param name="Status">How well it is supported.</param>
public sealed record Basis(string Quantity, string Method, string Source, Status Status);
