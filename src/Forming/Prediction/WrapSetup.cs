namespace Forming.Prediction;

/// <summary>How the panel is held and pulled.</summary>
/// <param name="LeverMm">Hand beyond the last fold, along the sheet [mm], &gt; 0.</param>
/// <param name="ClampGapMm">Clamp behind the first fold's tangent point [mm], at least 0.</param>
public sealed record WrapSetup(double LeverMm, double ClampGapMm = 0);
