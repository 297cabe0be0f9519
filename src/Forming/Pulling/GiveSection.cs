namespace Forming.Pulling;

/// <summary>One section of a form, with the panel lying on it.</summary>
/// <param name="MidMm">Place along the panel's mid surface [mm].</param>
/// <param name="Position">Place on the contact curve [mm].</param>
/// <param name="Onwards">Unit vector along the panel, towards the hand.</param>
/// <param name="Inwards">Unit vector square to the panel, towards the form.</param>
/// <param name="PanelMomentNmm">Moment that the panel itself carries there, whole width [N·mm].</param>
/// <param name="TurnPerLever">How far the free side turns from here to the hand, per lever, <c>k - W/M</c> [rad/mm].</param>
public readonly record struct GiveSection(
    double MidMm, Point3 Position, Point3 Onwards, Point3 Inwards, double PanelMomentNmm, double TurnPerLever);
