namespace Forming.Curves.Fitting;

/// <summary>A curve of one search.</summary>
/// <param name="Signed">The nearest curve on its knots, of either sign.</param>
/// <param name="OneWay">The nearest that bends one way only: the same where that already does.</param>
/// <param name="Count">How many curvatures and places of knots were chosen.</param>
internal sealed record Candidate(NormalFit Signed, NormalFit OneWay, int Count);
