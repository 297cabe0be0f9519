namespace Forming.TestStrips;

/// <summary>The ripple that a strip must have had.</summary>
/// <param name="LeverMm">Lever it was reckoned with [mm].</param>
/// <param name="RippleMm">Peak-to-valley height [mm], or null where the strip tells nothing.</param>
/// <param name="Slope">Slope against the smooth curve, or null where the strip tells nothing.</param>
/// <param name="WhyUnusable">Why it tells nothing, or null; arguments are <see cref="Results.Figure"/>s.</param>
public sealed record PrintReading(double LeverMm, double? RippleMm, Angle? Slope, FormattableString? WhyUnusable);
