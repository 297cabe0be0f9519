using Forming.Learning;

namespace Forming.TestStrips;

/// <summary>What is asked of strips measured flat and folded.</summary>
public sealed record NeutralQuestion
{
    /// <summary>Thickness of the form's sheet [mm], &gt; 0.</summary>
    public required double ThicknessMm { get; init; }

    /// <summary>The strips, at least one.</summary>
    public required IReadOnlyList<NeutralStrip> Strips { get; init; }

    /// <summary>To where the legs are measured.</summary>
    public FlangeEnd MeasuredTo { get; init; } = FlangeEnd.MoldLine;

    /// <summary>95 % of measured lengths lie within this of the true one [mm], &gt; 0.</summary>
    public double LengthErrorMm { get; init; } = 0.1;

    /// <summary>95 % of measured fold angles lie within this of the true one, at least 0.</summary>
    public Angle AngleError { get; init; } = Angle.FromDegrees(0.5);

    /// <summary>95 % of measured inside radii lie within this of the true one [mm], at least 0.</summary>
    public double RadiusErrorMm { get; init; } = 0.1;
}

/// <summary>A strip measured flat, folded once and measured again.</summary>
/// <param name="FlatLengthMm">Length before folding [mm], &gt; 0.</param>
/// <param name="FlangeAMm">One leg [mm], as <see cref="NeutralQuestion.MeasuredTo"/> says.</param>
/// <param name="FlangeBMm">The other leg [mm].</param>
/// <param name="FoldAngle">Turned angle, above 0 and below 180°.</param>
/// <param name="InsideRadiusMm">Inside radius of the fold [mm], &gt; 0.</param>
/// <param name="ThicknessMm">Thickness [mm], &gt; 0.</param>
public readonly record struct NeutralStrip(
    double FlatLengthMm, double FlangeAMm, double FlangeBMm, Angle FoldAngle, double InsideRadiusMm, double ThicknessMm);

/// <summary>What one strip says by itself.</summary>
/// <param name="AllowanceMm">Length that the fold took of the flat: its bend allowance [mm].</param>
/// <param name="Factor">Neutral factor K.</param>
/// <param name="FactorError">How far K may be out by the reading errors, at 95 %.</param>
/// <param name="Published">K by the published formula for this radius and thickness, or null where it does not reach.</param>
public sealed record NeutralReading(double AllowanceMm, double Factor, double FactorError, double? Published);

/// <summary>What strips taught about the neutral line.</summary>
/// <param name="Factor">Neutral factor K with its interval.</param>
/// <param name="Margin">How far a single strip may lie from it, in units of its reading error.</param>
/// <param name="Published">K by the published formula, the mean over the strips; null where it does not reach.</param>
/// <param name="Readings">The strips, one by one.</param>
public sealed record NeutralLesson(
    Interval Factor, Margin Margin, double? Published, IReadOnlyList<NeutralReading> Readings) : StripLesson;
