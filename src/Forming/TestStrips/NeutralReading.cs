namespace Forming.TestStrips;

/// <summary>What one strip says by itself.</summary>
/// <param name="AllowanceMm">Length that the fold took of the flat: its bend allowance [mm].</param>
/// <param name="Factor">Neutral factor K.</param>
/// <param name="FactorError">How far K may be out by the reading errors, at 95 %.</param>
/// <param name="Published">K by the published formula for this radius and thickness, or null where it does not reach.</param>
public sealed record NeutralReading(double AllowanceMm, double Factor, double FactorError, double? Published);
