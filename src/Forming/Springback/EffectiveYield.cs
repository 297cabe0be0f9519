namespace Forming.Springback;

/// <summary>A measured effective yield stress, put into pure bending.</summary>
/// <param name="YieldMpa">Effective yield stress [MPa], &gt; 0.</param>
public sealed record EffectiveYield(double YieldMpa) : SpringbackChoice;
