namespace Forming.TestStrips;

/// <summary>A strip measured flat, folded once and measured again.</summary>
/// <param name="FlatLengthMm">Length before folding [mm], &gt; 0.</param>
/// <param name="FlangeAMm">One leg [mm], as <see cref="NeutralQuestion.MeasuredTo"/> says.</param>
/// <param name="FlangeBMm">The other leg [mm].</param>
/// <param name="FoldAngle">Turned angle, above 0 and below 180°.</param>
/// <param name="InsideRadiusMm">Inside radius of the fold [mm], &gt; 0.</param>
/// <param name="ThicknessMm">Thickness [mm], &gt; 0.</param>
public readonly record struct NeutralStrip(
    double FlatLengthMm, double FlangeAMm, double FlangeBMm, Angle FoldAngle, double InsideRadiusMm, double ThicknessMm);
