using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>The flat panel blank with its registration marks.</summary>
internal static class PanelBlankBlock
{
    /// <summary>Draws the blank.</summary>
    /// <param name="job">The job.</param>
    public static Block Of(DrawingJob job)
    {
        var sketch = new Sketch();
        var (blank, marks) = (job.Plan.Panel.Blank, job.Plan.Panel.Marks.OrderBy(mark => mark.AtMm).ToArray());
        sketch.Write(0, Page.Heading, "Panel blank, flat", Page.Heading, isBold: true);
        sketch.Write(
            38,
            Page.Heading,
            $"{job.Readout.Size(blank.LengthMm, blank.WidthMm)}, {job.Readout.Mass(blank.MassKg)}; pencil or ink only, never scribed",
            Page.Small);
        PoleColumn[] columns =
        [
            new("registration mark", 60, Anchor.Start),
            new($"from the lead-in edge, {job.Readout.LengthName}", Page.Width, Anchor.End, IsBold: true),
        ];
        var bottom = Pole.Draw(
            sketch,
            Page.Heading + 2,
            (0, blank.LengthMm),
            blank.WidthMm,
            columns,
            [.. marks.Select(mark => new PoleRow(mark.AtMm, [mark.Name, job.Readout.Length(mark.AtMm)]))],
            pole =>
            {
                pole.Outline(blank.Outline);
                foreach (var mark in marks)
                    pole.Across(Pen.Mark, new(new(mark.AtMm, 0), new(mark.AtMm, blank.WidthMm)));
                if (job.Panel.Mirrored)
                    pole.Across(Pen.Centre, new(new(blank.LengthMm / 2, 0), new(blank.LengthMm / 2, blank.WidthMm)));
            });
        sketch.Write(Pole.BlankWidth / 2, Page.Heading + 5.3, "lead-in edge", Page.Small, Anchor.Middle);
        sketch.Write(Pole.BlankWidth / 2, bottom + 3.2, job.Panel.Mirrored ? "lead-in edge of the second half" : "lead-out edge", Page.Small, Anchor.Middle);
        return new(bottom + 4, sketch.Items);
    }
}
