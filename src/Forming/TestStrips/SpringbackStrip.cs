namespace Forming.TestStrips;

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
