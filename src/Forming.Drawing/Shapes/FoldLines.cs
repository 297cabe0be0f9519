using Forming.Layout;
using Forming.Wrapping;

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

/// <summary>A registration mark of the panel as a line on its blank.</summary>
/// <param name="Mark">The mark.</param>
/// <param name="Line">The line, in the plan's frame.</param>
internal sealed record MarkLine(PanelMark Mark, Segment Line)
{
    /// <summary>The marks of a job's panel, in order along it.</summary>
    /// <param name="job">The job.</param>
    public static MarkLine[] Of(DrawingJob job)
    {
        var width = job.Plan.Panel.Blank.WidthMm;
        return
        [
            .. from mark in job.Plan.Panel.Marks
               orderby mark.AtMm
               select new MarkLine(mark, new(mark.Near ?? new(mark.AtMm, 0), mark.Far ?? new(mark.AtMm, width))),
        ];
    }
}
