namespace Forming.Estimates;

/// <summary>A form held against another method.</summary>
/// <param name="Other">The other method.</param>
/// <param name="OtherTotal">What it costs for the batch [money].</param>
/// <param name="Saving">What the form saves on the batch; below 0 it costs more [money]. The other method's figures stand; low is the saving where the form's are high.</param>
/// <param name="Low">Break-even where all of the form's figures are low.</param>
/// <param name="Likely">Break-even at the likely figures.</param>
/// <param name="High">Break-even where all of the form's figures are high.</param>
public sealed record Comparison(OtherMethod Other, double OtherTotal, Band Saving, BreakEven Low, BreakEven Likely, BreakEven High);
