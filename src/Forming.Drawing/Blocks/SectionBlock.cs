using System.Globalization;
using Forming.Curves;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>The form in section, on the bench, with the panel as pulled and as finished.</summary>
internal static class SectionBlock
{
    private const double PictureWidth = 104;

    /// <summary>Heights that the picture may have, largest first [mm].</summary>
    private static readonly double[] PictureHeights = [104, 96, 88, 80, 72, 64];

    /// <summary>Where the legend begins, right of the picture [mm].</summary>
    public const double LegendAt = 107;

    private const double Top = Page.Heading + 3;

    /// <summary>Flats longer than this share of the curve's own size are cut short, so that the curve stays large.</summary>
    private const double MostFlat = 0.5;

    /// <summary>Draws the section as large as it goes with what follows on the same page, or else as large as it may be.</summary>
    /// <param name="job">The job.</param>
    /// <param name="enlarged">Paper over sheet, so that the scale is one of a drawing office's; null where nobody knows the paper.</param>
    /// <param name="room">Height that is left for it [mm].</param>
    public static Block Of(DrawingJob job, double? enlarged, double room)
    {
        Block? largest = null;
        foreach (var height in PictureHeights)
        {
            var block = Drawn(job, enlarged, height);
            if (block.HeightMm <= room)
                return block;
            largest ??= block;
        }

        return largest!;
    }

    private static Block Drawn(DrawingJob job, double? enlarged, double pictureHeight)
    {
        var sketch = new Sketch();
        sketch.Write(0, Page.Heading, "Section", Page.Heading, isBold: true);
        var picture = SectionPicture.Of(job, MostFlat);
        var frame = picture.Frame(PictureWidth, pictureHeight, Top, enlarged);
        if (enlarged is { } paper)
            sketch.Write(20, Page.Heading, $"scale {Scales.Name(frame.Scale * paper)}", Page.Small);
        picture = picture.ShownAt(frame.Scale);
        picture.Draw(sketch, frame);
        var bottom = frame.Bottom + 2;
        ScaleBar(sketch, job, frame, bottom + 3);
        var legend = Legend(sketch, job, picture);
        legend = FoldDetail.Draw(sketch, job, LegendAt, legend + 5);
        sketch.Add([new View("section", new(-2, Top), new(PictureWidth, bottom + 5))], default);
        var end = Math.Max(bottom + 4, legend);
        if (Developed(job) is { } developed)
            sketch.Write(0, end += Page.SmallLine + 1, Paragraph.OneLine(developed, Page.Width, Page.Text), Page.Text);
        return new(end, sketch.Items);
    }

    private static double Legend(Sketch sketch, DrawingJob job, SectionPicture picture)
    {
        var form = job.Plan.Form;
        var y = Top + 1;
        // A taper's face turns less than its edges sweep; its form has no other measure.
        var isTaper = job.Plan.Taper is not null;
        var turn = isTaper ? "face turns" : "sweep";
        sketch.Rectangle(Pen.Leader, new(LegendAt, y - 1.3), new(LegendAt + 9, y - 0.5), Tone.Ink);
        Entry(null, string.Create(CultureInfo.InvariantCulture, $"form, {form.Stations.Count} folds"), $"{turn} {Readout.Degrees(form.Sweep)}");
        Entry(Pen.Sheet, "panel as pulled", $"{turn} {Readout.Degrees(form.Sweep - form.Stepping.SweepOver)}");
        Entry(Pen.Phantom, "panel as finished", $"{turn} {Readout.Degrees(job.Plan.FinishedTurn)}");
        if (isTaper)
        {
            sketch.Line(Pen.Sight, new(LegendAt, y - 0.9), new(LegendAt + 9, y - 0.9));
            sketch.Write(LegendAt + 11, y, "far end of the form", Page.Small, isBold: true);
            y += Page.SmallLine + 1;
            Note($"R {SectionDimensions.Ends(job, EndOf(job, taper => taper.Near))} near, {SectionDimensions.Ends(job, EndOf(job, taper => taper.Far))} far, {SectionDimensions.Face(job)}; sweep {Readout.NamedDegrees(PanelShape.AskedSweep(job))} at both edges. The face turns less: square to the fold lines.");
            Note("All else at the near end; folds drawn sharp.");
        }

        if (job.Panel.Mirrored)
            Note(job.Plan.Taper is { NeedsOppositeHand: true } ? "second half on an opposite-hand form" : "second half alike, from the other edge");
        if (picture.IsCutShort)
            Note("long flats cut short");
        if (picture.IsThickened)
            Note("sheets drawn thicker than they are");
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

    private static BendSpan[] EndOf(DrawingJob job, Func<TaperCurve, PanelCurve> end) =>
        [.. FinishedCurve.On(end((TaperCurve)job.Panel.Curve), job.Panel.Surface, job.Panel.Sheet.ThicknessMm).Bends];

    // Flats and curve along the sheet, as they add up to the blank.
    private static string? Developed(DrawingJob job)
    {
        if (job.Plan.Taper is not null)
            return null;
        var (panel, curve) = (job.Panel, PanelShape.Asked(job).LengthMm);
        List<double> parts = [panel.LeadInMm, curve, panel.LeadOutMm];
        if (panel.Mirrored)
            parts.AddRange([curve, panel.LeadInMm]);
        if (panel.TrimMm > 0)
            parts = [panel.TrimMm, .. parts, panel.TrimMm];
        var sum = string.Join(" + ", parts.Where(part => part > 0).Select(job.Readout.LaidOut));
        return $"Developed: {sum} = {job.Readout.LaidOutWithUnit(job.Plan.Panel.Blank.LengthMm)}{(panel.TrimMm > 0 ? ", trim at both ends" : "")}{(job.Readout.IsToTheTape ? ", each to the tape" : "")}";
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
