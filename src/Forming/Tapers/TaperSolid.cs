namespace Forming.Tapers;

/// <summary>A tapered form and its panel in space, for pictures and solids: matching points along both ends.</summary>
/// <param name="FormNear">[folds + 2] contact-side mold lines at the near end, leads at the ends [mm].</param>
/// <param name="FormFar">[folds + 2] the same at the far end [mm].</param>
/// <param name="PanelNear">[n] inside face of the panel on the form, near end [mm].</param>
/// <param name="PanelFar">[n] the same at the far end [mm].</param>
/// <param name="FinishedNear">[n] inside face of the finished panel, near end [mm].</param>
/// <param name="FinishedFar">[n] the same at the far end [mm].</param>
public sealed record TaperSolid(
    IReadOnlyList<Point3> FormNear,
    IReadOnlyList<Point3> FormFar,
    IReadOnlyList<Point3> PanelNear,
    IReadOnlyList<Point3> PanelFar,
    IReadOnlyList<Point3> FinishedNear,
    IReadOnlyList<Point3> FinishedFar);
