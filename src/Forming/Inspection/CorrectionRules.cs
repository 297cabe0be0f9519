namespace Forming.Inspection;

/// <summary>How folds may be corrected, and what the form must hold afterwards.</summary>
/// <param name="Step">Step of the stop [rad], &gt; 0.</param>
/// <param name="Direction">Which way.</param>
/// <param name="MostSteps">Most steps at one fold to either side, at least 1.</param>
/// <param name="Closing">Error of the sweep that may be left.</param>
/// <param name="VertexMm">Miss of any mold line that may be left, the first flat held [mm].</param>
public sealed record CorrectionRules(Angle Step, CorrectionDirection Direction, int MostSteps, Angle Closing, double VertexMm);
