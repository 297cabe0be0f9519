using Forming.Layout;

namespace Forming.Drawing.Shapes;

/// <summary>The lines of one fold on the flat blank.</summary>
/// <param name="Station">The fold.</param>
/// <param name="Fold">Centre line, to be marked.</param>
/// <param name="FirstTangent">Bend tangent line on the lead-in side.</param>
/// <param name="SecondTangent">Bend tangent line on the lead-out side.</param>
/// <param name="Sight">Line set under the nose.</param>
internal sealed record FoldLines(Station Station, Segment Fold, Segment FirstTangent, Segment SecondTangent, Segment Sight)
{
    /// <summary>The same lines on a blank turned over.</summary>
    /// <param name="widthMm">Width of the blank [mm].</param>
    public FoldLines TurnedOver(double widthMm) => new(
        Station, Fold.TurnedOver(widthMm), FirstTangent.TurnedOver(widthMm), SecondTangent.TurnedOver(widthMm), Sight.TurnedOver(widthMm));
}
