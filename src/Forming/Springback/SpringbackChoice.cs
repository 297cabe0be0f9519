namespace Forming.Springback;

/// <summary>How springback is found.</summary>
/// <param name="YieldMpa">A measured effective yield stress, in place of the material's own [MPa], &gt; 0; null takes the material's.</param>
public abstract record SpringbackChoice(double? YieldMpa);

/// <summary>Pure bending of the panel's sheet: quick, and a few percent tighter than what is asked for.</summary>
/// <param name="YieldMpa">A measured effective yield stress [MPa], &gt; 0, or null.</param>
public sealed record PureBending(double? YieldMpa = null) : SpringbackChoice(YieldMpa);

/// <summary>The simulated pull over the form itself: folds and facets are chosen so that the panel comes off as wanted.</summary>
/// <param name="YieldMpa">A measured effective yield stress [MPa], &gt; 0, or null.</param>
public sealed record SolvedOnWrap(double? YieldMpa = null) : SpringbackChoice(YieldMpa);

/// <summary>A measured springback factor: pure geometry, with no pull behind it.</summary>
/// <param name="Factor">Finished curvature over formed curvature, above 0 and at most 1.</param>
public sealed record MeasuredFactor(double Factor) : SpringbackChoice((double?)null);
