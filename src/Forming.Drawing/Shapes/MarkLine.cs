using Forming.Blanks;

namespace Forming.Drawing.Shapes;

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
