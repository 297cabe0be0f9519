namespace Forming.Tolerances;

/// <summary>What the finished form must hold.</summary>
/// <param name="Closing">Error of the sum of all folds, to either side.</param>
/// <param name="EndMm">Error of the end of the lead-out, the first flat held [mm].</param>
/// <param name="Coverage">Standard deviations that have to fit in, &gt; 0; 2 is about 95 % of forms.</param>
public sealed record WantedTolerance(Angle Closing, double EndMm, double Coverage = 2);
