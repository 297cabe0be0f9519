namespace Forming.Estimates;

/// <summary>Sheet for forms or panels, and its cost.</summary>
/// <param name="Id"><c>form-sheet</c> or <c>panel-sheet</c>.</param>
/// <param name="Pieces">Blanks.</param>
/// <param name="MassKg">Mass of all blanks together [kg].</param>
/// <param name="Sheet">Name of the stock sheet they are priced by, or null where they are priced by mass.</param>
/// <param name="BlanksPerSheet">Blanks that one such sheet gives, or null.</param>
/// <param name="Sheets">Whole sheets that hold all blanks, or null.</param>
/// <param name="EachCost">One blank [money].</param>
/// <param name="Cost">All blanks [money].</param>
public sealed record MaterialLine(
    string Id, int Pieces, double MassKg, string? Sheet, int? BlanksPerSheet, int? Sheets, Band EachCost, Band Cost);
