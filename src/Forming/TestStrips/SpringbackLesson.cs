using Forming.Learning;
using Forming.Materials;

namespace Forming.TestStrips;

/// <summary>What is asked of strips pulled round a bar or over a form.</summary>
public sealed record SpringbackQuestion
{
    /// <summary>Material of the strips, and the thickness of the panel to come.</summary>
    public required Sheet Sheet { get; init; }

    /// <summary>The strips, at least one.</summary>
    public required IReadOnlyList<SpringbackStrip> Strips { get; init; }

    /// <summary>95 % of measured finished radii lie within this share of the true one, dimensionless, &gt; 0.</summary>
    public double ReadingError { get; init; } = 0.02;

    /// <summary>95 % of measured sweeps lie within this of the true one, &gt; 0.</summary>
    public Angle SweepError { get; init; } = Angle.FromDegrees(0.5);

    /// <summary>95 % of the folds of a faceted form lie within this of the angle that is given, at least 0.</summary>
    public Angle FoldError { get; init; } = Angle.FromDegrees(0.3);

    /// <summary>Finished inside radii of the panel to come [mm]; empty takes the middle one of the strips.</summary>
    public IReadOnlyList<double> TargetsMm { get; init; } = [];

    /// <summary>How far the panel's finished radius may be off, 95 times of 100 [mm], &gt; 0.</summary>
    public double ToleranceMm { get; init; } = 1;
}

/// <summary>A strip pulled round a bar or over a form and let go; a finished radius or a finished sweep was read, or both.</summary>
/// <param name="Over">What it was pulled round.</param>
/// <param name="ThicknessMm">Thickness of the strip [mm], &gt; 0.</param>
public sealed record SpringbackStrip(StripBar Over, double ThicknessMm)
{
    /// <summary>Radius of its inside face after letting go [mm], above that under load; null where it was not read. On a faceted form
    /// over the middle folds.</summary>
    public double? FinishedRadiusMm { get; init; }

    /// <summary>How far it turns after letting go; null where it was not read. Only over a faceted form.</summary>
    public Angle? FinishedSweep { get; init; }

    /// <summary>Width of the strip [mm], &gt; 0; null takes it as wide as a panel.</summary>
    public double? WidthMm { get; init; }

    /// <summary>Whether its thickness was measured and is not the nominal one.</summary>
    public bool IsThicknessMeasured { get; init; }

    /// <summary>A strip pulled round a bar.</summary>
    /// <param name="barRadiusMm">Radius of the bar [mm].</param>
    /// <param name="finishedRadiusMm">Finished inside radius [mm].</param>
    /// <param name="thicknessMm">Thickness [mm].</param>
    public static SpringbackStrip Round(double barRadiusMm, double finishedRadiusMm, double thicknessMm) =>
        new(new RoundBar(barRadiusMm), thicknessMm) { FinishedRadiusMm = finishedRadiusMm };
}

/// <summary>One strip beside what the learnt yield makes of it.</summary>
/// <param name="Factor">Measured springback factor: finished over formed curvature, or sweep where no radius was read.</param>
/// <param name="EffectiveYieldMpa">Yield stress with which this strip alone agrees [MPa].</param>
/// <param name="ExpectedFinishedMm">Finished inside radius by the learnt yield [mm], or null where it would stay flat.</param>
/// <param name="NominalFinishedMm">Finished inside radius by the material's own yield [mm], or null where the strip would have stayed
/// flat.</param>
/// <param name="ExpectedSweep">Finished sweep by the learnt yield; null round a bar.</param>
/// <param name="Miss">Measured over expected finished mid-surface radius, or sweep where no radius was read, less one.</param>
/// <param name="PlaneStress">Share of plane stress by the strip's width, 0 for a wide one.</param>
public sealed record SpringbackReading(
    double Factor,
    double EffectiveYieldMpa,
    double? ExpectedFinishedMm,
    double? NominalFinishedMm,
    Angle? ExpectedSweep,
    double Miss,
    double PlaneStress);

/// <summary>What the learnt yield does to the form of a wanted radius.</summary>
/// <param name="FinishedRadiusMm">Wanted inside radius [mm].</param>
/// <param name="FormRadiusBeforeMm">Form radius by the material's own yield [mm].</param>
/// <param name="FormRadiusMm">Form radius by the learnt yield [mm], with its interval.</param>
/// <param name="Factor">Springback factor there, finished over formed curvature.</param>
public sealed record SpringbackEffect(double FinishedRadiusMm, double FormRadiusBeforeMm, Interval FormRadiusMm, double Factor);

/// <summary>What strips taught about springback.</summary>
/// <param name="YieldMpa">Effective yield stress [MPa] with its interval: the grade's scatter joined with the readings.</param>
/// <param name="YieldOverModulus">The same over Young's modulus, dimensionless.</param>
/// <param name="NominalYieldMpa">The material's own yield stress [MPa].</param>
/// <param name="AloneMpa">What the readings say by themselves, by least squares [MPa].</param>
/// <param name="PriorWeight">Weight of the grade against the readings in the effective yield, 0 to 1.</param>
/// <param name="Sheet">What the strips leave open between yield and thickness.</param>
/// <param name="Margin">How far a single reading may be from the expected one, in reading errors.</param>
/// <param name="Readings">The strips, one by one; null for one whose pull cannot be followed.</param>
/// <param name="Effects">What the yield does to the form of each wanted radius.</param>
/// <param name="Needed">How many more strips the first wanted radius takes.</param>
public sealed record SpringbackLesson(
    Interval YieldMpa,
    Interval YieldOverModulus,
    double NominalYieldMpa,
    Interval AloneMpa,
    double PriorWeight,
    SheetBands Sheet,
    Margin Margin,
    IReadOnlyList<SpringbackReading?> Readings,
    IReadOnlyList<SpringbackEffect> Effects,
    StripsNeeded Needed) : StripLesson;

/// <summary>What springback alone cannot tell apart.</summary>
/// <param name="YieldMpa">The sheet's own yield stress [MPa].</param>
/// <param name="ThicknessMm">The sheet's own thickness [mm].</param>
public sealed record SheetBands(Interval YieldMpa, Interval ThicknessMm);

/// <summary>How many more strips it takes until a panel's finished radius is known well enough.</summary>
/// <param name="ToleranceMm">How far it may be off, 95 times of 100 [mm].</param>
/// <param name="NowMm">How far it may be off now, on this sheet [mm].</param>
/// <param name="Strips">More strips, pulled round the form's radius and read as well; 0 where none is needed, null where a hundred do not
/// do.</param>
/// <param name="OtherSheetsMm">How far the radius moves on another sheet of the grade by its thickness alone, 95 times of 100 [mm]: no strip
/// shows that.</param>
/// <param name="Text">All of it in words; arguments are <see cref="Results.Figure"/>s.</param>
public sealed record StripsNeeded(double ToleranceMm, double NowMm, int? Strips, double OtherSheetsMm, FormattableString Text);
