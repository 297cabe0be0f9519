using Forming.Results;

namespace Forming.Materials;

/// <summary>Where one value comes from.</summary>
/// <param name="Source">The text it was read in, or what it rests on.</param>
/// <param name="Status">How well it is supported.</param>
public readonly record struct Provenance(string Source, Status Status);
