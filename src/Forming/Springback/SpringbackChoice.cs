namespace Forming.Springback;

/// <summary>How springback is found.</summary>
public abstract record SpringbackChoice;

/// <summary>Pure bending of the panel's sheet.</summary>
public sealed record PureBending : SpringbackChoice;

/// <summary>Pure bending and the extra set that facets leave.</summary>
public sealed record WrappedOverFacets : SpringbackChoice;

/// <summary>A measured effective yield stress, put into pure bending.</summary>
/// <param name="YieldMpa">Effective yield stress [MPa], &gt; 0.</param>
public sealed record EffectiveYield(double YieldMpa) : SpringbackChoice;

/// <summary>A measured springback factor.</summary>
/// <param name="Factor">Finished curvature over formed curvature, above 0 and at most 1.</param>
public sealed record MeasuredFactor(double Factor) : SpringbackChoice;

/// <summary>How the panel springs back from the form to the finished curve.</summary>
/// <param name="Model">Id of the model used: <c>pure-bending</c>, <c>wrapped</c>, <c>measured-factor</c> or <c>effective-yield</c>.</param>
/// <param name="FactorAtTightest">Finished over formed curvature where the finished curve is tightest.</param>
/// <param name="FactorAtGentlest">The same where it is gentlest; 0 at a flat end.</param>
/// <param name="Overbend">Form sweep less finished sweep.</param>
/// <param name="YieldRadiusMm">Mid-surface radius at which the sheet begins to yield [mm].</param>
/// <param name="OtherModel">Id of the model it is compared with.</param>
/// <param name="OtherSweep">Form sweep that the other model asks for.</param>
public sealed record SpringbackReport(
    string Model,
    double FactorAtTightest,
    double FactorAtGentlest,
    Angle Overbend,
    double YieldRadiusMm,
    string OtherModel,
    Angle OtherSweep);
