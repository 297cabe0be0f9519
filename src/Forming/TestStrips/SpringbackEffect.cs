namespace Forming.TestStrips;

/// <summary>What the learnt yield does to the form of a wanted radius.</summary>
/// <param name="FinishedRadiusMm">Wanted inside radius [mm].</param>
/// <param name="FormRadiusBeforeMm">Form radius by the material's own yield [mm].</param>
/// <param name="FormRadiusMm">Form radius by the learnt yield [mm], with its interval.</param>
/// <param name="Factor">Springback factor there, finished over formed curvature.</param>
public sealed record SpringbackEffect(double FinishedRadiusMm, double FormRadiusBeforeMm, Interval FormRadiusMm, double Factor);
