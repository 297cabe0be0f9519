using System.Globalization;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;
using Forming.Layout;

namespace Forming.Drawing.Blocks;

/// <summary>The flat form blank with its numbered fold lines and their values.</summary>
internal static class FormBlankBlocks
{
    /// <summary>Lines nearer than this on the sheet would run into one: the enlarged fold shows them.</summary>
    private const double LeastGap = 0.5;

    private const double HeadingHeight = 12.5;

    /// <summary>Draws the blank, in as many parts as the height of a page asks for.</summary>
    /// <param name="job">The job.</param>
    /// <param name="mostHeight">Height that a part may have [mm].</param>
    public static IEnumerable<Block> Of(DrawingJob job, double mostHeight)
    {
        var flat = FormBlankLines.Of(job).TurnedOver();
        var count = flat.Folds.Count;
        var rowsInAPart = (int)Math.Clamp((mostHeight - HeadingHeight - 4) / Page.Row, 4, Math.Max(4, count));
        var parts = (count + rowsInAPart - 1) / rowsInAPart;
        for (var part = 0; part < parts; part++)
            yield return Part(job, flat, part * count / parts, (part + 1) * count / parts);
    }

    private static Block Part(DrawingJob job, FormBlankLines flat, int first, int end)
    {
        var sketch = new Sketch();
        var blank = job.Plan.Form.Blank;
        sketch.Write(0, Page.Heading, "Form blank, flat", Page.Heading, isBold: true);
        var about = $"{job.Readout.Size(blank.LengthMm, blank.WidthMm)}, {job.Readout.Mass(blank.MassKg)}; seen from the face that is marked, width out of scale";
        if (end - first < flat.Folds.Count)
            about = string.Create(CultureInfo.InvariantCulture, $"stations {first + 1} to {end} of {flat.Folds.Count}; {about}");
        sketch.Write(38, Page.Heading, about, Page.Small);

        var from = first == 0 ? 0 : Between(flat, first);
        var to = end == flat.Folds.Count ? blank.LengthMm : Between(flat, end);
        var folds = flat.Folds.Skip(first).Take(end - first).ToArray();
        var bottom = Pole.Draw(
            sketch, Page.Heading + 2, (from, to), blank.WidthMm, Columns(job), [.. folds.Select(fold => RowOf(job, fold))], pole =>
            {
                if (job.Plan.Taper is not null)
                    pole.StraightEdges(from, to);
                Edges(pole, flat, from, to);
                foreach (var fold in folds)
                    Lines(pole, fold);
                if (flat.DatumMm >= from && flat.DatumMm <= to)
                    DatumMark(sketch, pole, job, flat.DatumMm);
            });
        sketch.Write(Pole.BlankWidth / 2, Page.Heading + 5.3, first == 0 ? "lead-in edge" : "continued", Page.Small, Anchor.Middle);
        sketch.Write(Pole.BlankWidth / 2, bottom + 3.2, end == flat.Folds.Count ? "lead-out edge" : "continued", Page.Small, Anchor.Middle);
        return new(bottom + 4, sketch.Items);
    }

    private static PoleColumn[] Columns(DrawingJob job)
    {
        var unit = job.Readout.LengthName;
        var tape = job.Marks.Tape.Unit == LengthUnit.In ? "in" : "mm";
        return job.Plan.Taper is null
            ?
            [
                new("fold", 64, Anchor.End, IsBold: true),
                new($"mark, {tape}", 83, Anchor.End, IsBold: true),
                new($"centre, {unit}", 101),
                new($"sight, {unit}", 118),
                new("angle", 134),
                new("stop", Page.Width),
            ]
            :
            [
                new("fold", 64, Anchor.End, IsBold: true),
                new($"left, {tape}", 79, Anchor.End, IsBold: true),
                new($"right, {tape}", 94, Anchor.End, IsBold: true),
                new($"left, {unit}", 108),
                new($"right, {unit}", 122),
                new("angle", 136),
                new("stop", Page.Width),
            ];
    }

    private static PoleRow RowOf(DrawingJob job, FoldLines fold)
    {
        var (station, number) = (fold.Station, fold.Station.Number.ToString(CultureInfo.InvariantCulture));
        string[] places = station.Line is { } line
            ? [line.MarkFar.Text, station.MarkText, job.Readout.Length(line.BaseFarMm), job.Readout.Length(line.BaseNearMm)]
            : [station.MarkText, job.Readout.Length(station.AtMm), job.Readout.Length(station.SightLineMm)];
        return new(
            fold.Fold, [number, .. places, Readout.Degrees(station.FoldAngle), Readout.Degrees(station.StopSetting)], station.Number);
    }

    // Half-way to the fold before, wherever along the two that comes first.
    private static double Between(FormBlankLines flat, int next)
    {
        Segment before = flat.Folds[next - 1].Fold, after = flat.Folds[next].Fold;
        return (before.Start.X + before.End.X + after.Start.X + after.End.X) / 4;
    }

    private static void Edges(Pole pole, FormBlankLines flat, double from, double to)
    {
        for (var i = 1; i < flat.Outline.Count; i++)
        {
            if (Clip.Along(flat.Outline[i - 1], flat.Outline[i], from, to) is { } edge)
                pole.Outline([edge.Start, edge.End]);
        }
    }

    private static void Lines(Pole pole, FoldLines fold)
    {
        pole.Across(Pen.Fold, fold.Fold);
        if (pole.OnSheet(fold.Fold.DistanceTo(fold.FirstTangent)) > LeastGap)
        {
            pole.Across(Pen.Tangent, fold.FirstTangent);
            pole.Across(Pen.Tangent, fold.SecondTangent);
        }

        if (pole.OnSheet(fold.Fold.DistanceTo(fold.Sight)) > LeastGap)
            pole.Across(Pen.Sight, fold.Sight);
    }

    private static void DatumMark(Sketch sketch, Pole pole, DrawingJob job, double datum)
    {
        var at = pole.At(new(datum, 0));
        if (job.Marks.Datum == Datum.Centre)
            pole.Across(Pen.Centre, new(new(datum, 0), new(datum, job.Plan.Form.Blank.WidthMm)));
        sketch.Polygon(Pen.Leader, [at, at + new Point(-2.4, -1.3), at + new Point(-2.4, 1.3)], Tone.Ink);
        sketch.Write(-3, at.Y + 1, "0", Page.Text, Anchor.End, isBold: true);
    }
}
