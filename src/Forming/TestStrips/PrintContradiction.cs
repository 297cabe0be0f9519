namespace Forming.TestStrips;

/// <summary>A strip that came out smooth though another with no more ripple shows.</summary>
/// <param name="Smooth">Place of the smooth one in the list, from 0.</param>
/// <param name="Showing">Place of the one that shows.</param>
/// <param name="Text">Both ripples, in words; arguments are <see cref="Results.Figure"/>s.</param>
public sealed record PrintContradiction(int Smooth, int Showing, FormattableString Text);
