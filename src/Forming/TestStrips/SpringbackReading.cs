namespace Forming.TestStrips;

/// <summary>One strip beside what the learnt yield makes of it.</summary>
/// <param name="Factor">Measured springback factor, finished over formed curvature.</param>
/// <param name="EffectiveYieldMpa">Yield stress with which this strip alone agrees [MPa].</param>
/// <param name="ExpectedFinishedMm">Finished inside radius by the learnt yield [mm].</param>
/// <param name="NominalFinishedMm">Finished inside radius by the material's own yield [mm], or null where the strip would have stayed flat.</param>
/// <param name="Miss">Measured over expected finished mid-surface radius, less one.</param>
public sealed record SpringbackReading(
    double Factor, double EffectiveYieldMpa, double ExpectedFinishedMm, double? NominalFinishedMm, double Miss);
