using System.Globalization;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>The form in section, on the bench, with the panel as pulled and as finished.</summary>
internal static class SectionBlock
{
    private const double PictureWidth = 100;
    private const double PictureHeight = 82;
    private const double LegendAt = 106;
    private const double Top = Page.Heading + 3;

    /// <summary>Flats longer than this share of the curve's own size are cut short, so that the curve stays large.</summary>
    private const double MostFlat = 0.7;

    /// <summary>Draws the section.</summary>
    /// <param name="job">The job.</param>
    public static Block Of(DrawingJob job)
    {
        var sketch = new Sketch();
        sketch.Write(0, Page.Heading, "Section", Page.Heading, isBold: true);
        var picture = SectionPicture.Of(job, MostFlat);
        var frame = picture.Frame(PictureWidth, PictureHeight, Top);
        picture.Draw(sketch, frame);
        var bottom = frame.Bottom + 2;
        ScaleBar(sketch, job, frame, bottom + 3);
        var legend = Legend(sketch, job, picture.IsCutShort);
        legend = FoldDetail.Draw(sketch, job, LegendAt, legend + 5);
        return new(Math.Max(bottom + 4, legend), sketch.Items);
    }

    private static double Legend(Sketch sketch, DrawingJob job, bool isCutShort)
    {
        var (form, panel) = (job.Plan.Form, job.Plan.Panel);
        var y = Top + 1;
        var finished = form.Sweep - form.Stepping.SweepOver - panel.Springback.Overbend;
        sketch.Rectangle(Pen.Leader, new(LegendAt, y - 1.3), new(LegendAt + 9, y - 0.5), Tone.Ink);
        Entry(null, string.Create(CultureInfo.InvariantCulture, $"form, {form.Stations.Count} folds"), $"sweep {Readout.Degrees(form.Sweep)}");
        Entry(Pen.Sheet, "panel as pulled", $"sweep {Readout.Degrees(form.Sweep - form.Stepping.SweepOver)}");
        Entry(Pen.Phantom, "panel as finished", $"sweep {Readout.Degrees(finished)}");
        if (job.Plan.Taper is not null)
        {
            sketch.Line(Pen.Sight, new(LegendAt, y - 0.9), new(LegendAt + 9, y - 0.9));
            sketch.Write(LegendAt + 11, y, "far end of the form", Page.Small, isBold: true);
            y += Page.SmallLine + 1;
            Note("all else at the near end; folds drawn sharp");
        }

        if (job.Panel.Mirrored)
            Note(job.Plan.Taper is { NeedsOppositeHand: true } ? "second half on an opposite-hand form" : "second half alike, from the other edge");
        if (isCutShort)
            Note("long flats cut short");
        return y;

        void Entry(Pen? pen, string name, string figure)
        {
            if (pen is { } edge)
            {
                sketch.Line(edge, new(LegendAt, y - 1.3), new(LegendAt + 9, y - 1.3));
                sketch.Line(edge, new(LegendAt, y - 0.5), new(LegendAt + 9, y - 0.5));
            }

            sketch.Write(LegendAt + 11, y, name, Page.Small, isBold: true);
            sketch.Write(LegendAt + 11, y += Page.SmallLine, figure, Page.Small);
            y += Page.SmallLine + 1;
        }

        void Note(string text)
        {
            foreach (var line in Paragraph.Lines(text, Page.Width - LegendAt, Page.Small))
            {
                sketch.Write(LegendAt, y, line, Page.Small);
                y += Page.SmallLine;
            }
        }
    }

    private static void ScaleBar(Sketch sketch, DrawingJob job, SectionFrame frame, double y)
    {
        // The longest of 1, 2 or 5 times a power of ten that stays below a third of the picture.
        var most = PictureWidth / 3 / frame.Scale / job.Readout.UnitMm;
        var power = Math.Pow(10, Math.Floor(Math.Log10(most)));
        var length = (most / power) switch { >= 5 => 5 * power, >= 2 => 2 * power, _ => power } * job.Readout.UnitMm;
        var end = length * frame.Scale;
        sketch.Line(Pen.Fold, [new(0, y - 1.5), new(0, y), new(end, y), new(end, y - 1.5)]);
        sketch.Write(end + 2, y, job.Readout.LengthWithUnit(length), Page.Small);
    }
}
