using Forming.Results;

namespace Forming.Estimates;

/// <summary>A figure that nobody gave, and what stands in its place.</summary>
/// <param name="Id">Path of the figure in the request, such as <c>rates.form.folding.each</c>.</param>
/// <param name="Value">The value in use.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Text">What it is, in words.</param>
/// <param name="Status">How well it is supported.</param>
public sealed record Assumption(string Id, double Value, RateUnit Unit, string Text, Status Status);
