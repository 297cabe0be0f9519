namespace Forming.Results;

/// <summary>One hint that saves a panel.</summary>
/// <param name="Id">Stable id such as <c>burr-side</c>.</param>
/// <param name="Text">The hint, in words; arguments are <see cref="Figure"/>s.</param>
public sealed record ShopNote(string Id, FormattableString Text);
