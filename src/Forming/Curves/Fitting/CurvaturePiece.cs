namespace Forming.Curves.Fitting;

/// <summary>A stretch of curve whose curvature is linear in arc length: a flat, an arc or a piece of clothoid.</summary>
/// <param name="LengthMm">Arc length [mm], &gt; 0.</param>
/// <param name="StartCurvature">Curvature where the piece begins [1/mm], at least 0.</param>
/// <param name="EndCurvature">Curvature where the piece ends [1/mm], at least 0; both 0 = flat.</param>
public readonly record struct CurvaturePiece(double LengthMm, double StartCurvature, double EndCurvature)
{
    /// <summary>Whether the piece does not bend at all.</summary>
    public bool IsFlat => StartCurvature == 0 && EndCurvature == 0;
}
