using Forming.Drawing.Shapes;

namespace Forming.Drawing.Blocks;

/// <summary>One line across a blank and the row of figures it leads to.</summary>
/// <param name="Line">The line [mm of the blank].</param>
/// <param name="Cells">Figures, column by column.</param>
/// <param name="Station">Number of the station, or null.</param>
internal sealed record PoleRow(Segment Line, IReadOnlyList<string> Cells, int? Station = null);
