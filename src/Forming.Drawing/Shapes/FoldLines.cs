using Forming.Layout;

namespace Forming.Drawing.Shapes;

/// <summary>The lines of one fold on the flat blank.</summary>
/// <param name="Station">The fold.</param>
/// <param name="Fold">Centre line, to be marked.</param>
/// <param name="FirstTangent">Bend tangent line on the lead-in side.</param>
/// <param name="SecondTangent">Bend tangent line on the lead-out side.</param>
/// <param name="Sight">Line set under the nose.</param>
internal sealed record FoldLines(Station Station, Segment Fold, Segment FirstTangent, Segment SecondTangent, Segment Sight);
