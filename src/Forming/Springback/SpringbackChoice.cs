namespace Forming.Springback;

/// <summary>How springback is found.</summary>
public abstract record SpringbackChoice;

/// <summary>Pure bending of the panel's sheet.</summary>
public sealed record PureBending : SpringbackChoice;

/// <summary>The simulated pull over the form itself: folds and facets are chosen so that the panel comes off as wanted.</summary>
public sealed record SolvedOnWrap : SpringbackChoice;

/// <summary>A measured effective yield stress, put into pure bending.</summary>
/// <param name="YieldMpa">Effective yield stress [MPa], &gt; 0.</param>
public sealed record EffectiveYield(double YieldMpa) : SpringbackChoice;

/// <summary>A measured springback factor.</summary>
/// <param name="Factor">Finished curvature over formed curvature, above 0 and at most 1.</param>
public sealed record MeasuredFactor(double Factor) : SpringbackChoice;
