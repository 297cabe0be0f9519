using Forming.Learning;
using Forming.Materials;

namespace Forming.TestStrips;

/// <summary>What is asked of strips pulled round a form.</summary>
public sealed record SpringbackQuestion
{
    /// <summary>Material of the strips, and the thickness of the panel to come.</summary>
    public required Sheet Sheet { get; init; }

    /// <summary>The strips, at least one.</summary>
    public required IReadOnlyList<SpringbackStrip> Strips { get; init; }

    /// <summary>95 % of measured finished radii lie within this share of the true one, dimensionless, &gt; 0.</summary>
    public double ReadingError { get; init; } = 0.02;

    /// <summary>Finished inside radii of the panel to come [mm]; empty takes the middle one of the strips.</summary>
    public IReadOnlyList<double> TargetsMm { get; init; } = [];
}

/// <summary>A strip pulled round a form and let go.</summary>
/// <param name="FormRadiusMm">Radius of the form's outside, which the strip's inside face lay on under load [mm], &gt; 0.</param>
/// <param name="FinishedRadiusMm">Radius of the strip's inside face after letting go [mm], above the form's.</param>
/// <param name="ThicknessMm">Thickness of the strip [mm], &gt; 0.</param>
public readonly record struct SpringbackStrip(double FormRadiusMm, double FinishedRadiusMm, double ThicknessMm)
{
    /// <summary>Curvature of the mid surface under load [1/mm].</summary>
    internal double LoadedCurvature => 1 / (FormRadiusMm + (ThicknessMm / 2));

    /// <summary>Curvature of the mid surface after letting go [1/mm].</summary>
    internal double FinishedCurvature => 1 / (FinishedRadiusMm + (ThicknessMm / 2));
}

/// <summary>One strip beside what the learnt yield makes of it.</summary>
/// <param name="Factor">Measured springback factor, finished over formed curvature.</param>
/// <param name="EffectiveYieldMpa">Yield stress with which this strip alone agrees [MPa].</param>
/// <param name="ExpectedFinishedMm">Finished inside radius by the learnt yield [mm].</param>
/// <param name="NominalFinishedMm">Finished inside radius by the material's own yield [mm], or null where the strip would have stayed
/// flat.</param>
/// <param name="Miss">Measured over expected finished mid-surface radius, less one.</param>
public sealed record SpringbackReading(
    double Factor, double EffectiveYieldMpa, double ExpectedFinishedMm, double? NominalFinishedMm, double Miss);

/// <summary>What the learnt yield does to the form of a wanted radius.</summary>
/// <param name="FinishedRadiusMm">Wanted inside radius [mm].</param>
/// <param name="FormRadiusBeforeMm">Form radius by the material's own yield [mm].</param>
/// <param name="FormRadiusMm">Form radius by the learnt yield [mm], with its interval.</param>
/// <param name="Factor">Springback factor there, finished over formed curvature.</param>
public sealed record SpringbackEffect(double FinishedRadiusMm, double FormRadiusBeforeMm, Interval FormRadiusMm, double Factor);

/// <summary>What strips taught about springback.</summary>
/// <param name="YieldMpa">Effective yield stress [MPa] with its interval.</param>
/// <param name="YieldOverModulus">The same over Young's modulus, dimensionless.</param>
/// <param name="NominalYieldMpa">The material's own yield stress [MPa].</param>
/// <param name="Margin">How far a single finished radius may be from the expected one, as a share.</param>
/// <param name="Readings">The strips, one by one.</param>
/// <param name="Effects">What the yield does to the form of each wanted radius.</param>
public sealed record SpringbackLesson(
    Interval YieldMpa,
    Interval YieldOverModulus,
    double NominalYieldMpa,
    Margin Margin,
    IReadOnlyList<SpringbackReading> Readings,
    IReadOnlyList<SpringbackEffect> Effects) : StripLesson;
