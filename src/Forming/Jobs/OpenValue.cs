namespace Forming.Jobs;

/// <summary>A value that the asker left open and that was chosen for it.</summary>
public enum OpenValue
{
    /// <summary>Flat before the panel's curve.</summary>
    PanelLeadIn,

    /// <summary>Flat after the panel's curve.</summary>
    PanelLeadOut,

    /// <summary>Material of the form.</summary>
    FormMaterial,

    /// <summary>Thickness of the form's sheet, and with it whether ribs back it.</summary>
    FormSheet,

    /// <summary>Inside radius of the form's folds.</summary>
    FormFoldRadius,

    /// <summary>Flat before the form's first fold.</summary>
    FormLeadIn,

    /// <summary>Flat after the form's last fold.</summary>
    FormLeadOut,

    /// <summary>Length of the brake.</summary>
    BrakeLength,
}
