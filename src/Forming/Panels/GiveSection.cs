namespace Forming.Panels;

/// <summary>One section of a form with the wrap complete.</summary>
/// <param name="MidMm">Place along the curve [mm].</param>
/// <param name="ArmMm">Arm of the hand force about it [mm].</param>
/// <param name="PanelMomentNmm">Moment that the panel itself carries there, whole width [N·mm].</param>
public readonly record struct GiveSection(double MidMm, double ArmMm, double PanelMomentNmm);
