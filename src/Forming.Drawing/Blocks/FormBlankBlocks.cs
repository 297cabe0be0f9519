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

    /// <summary>The same on a taper, which is drawn higher: its sight lines are set at both edges.</summary>
    private const double LeastTaperGap = 0.3;

    private const double HeadingHeight = 12.5;

    /// <summary>A tapered blank is drawn so high that its lines can be told apart [mm].</summary>
    private const double TaperHeight = 84;

    /// <summary>Draws the blank, in as many parts as the height of a page asks for.</summary>
    /// <param name="job">The job.</param>
    /// <param name="mostHeight">Height that a part may have [mm].</param>
    public static IEnumerable<Block> Of(DrawingJob job, double mostHeight)
    {
        var flat = FormBlankLines.Of(job).TurnedOver();
        var count = flat.Folds.Count;
        var room = mostHeight - HeadingHeight - PoleColumn.GroupsHeight(Columns(job)) - 4;
        var rowsInAPart = (int)Math.Clamp(room / Page.Row, 4, Math.Max(4, count));
        var parts = (count + rowsInAPart - 1) / rowsInAPart;
        for (var part = 0; part < parts; part++)
            yield return Part(job, flat, part * count / parts, (part + 1) * count / parts);
    }

    private static Block Part(DrawingJob job, FormBlankLines flat, int first, int end)
    {
        var sketch = new Sketch();
        var blank = job.Plan.Form.Blank;
        sketch.Write(0, Page.Heading, "Form blank, flat", Page.Heading, isBold: true);
        var isTaper = job.Plan.Taper is not null;
        var about = $"{job.Readout.Size(blank.LengthMm, blank.WidthMm)}, {job.Readout.Mass(blank.MassKg)}; seen from the face that is marked, width out of scale";
        if (end - first < flat.Folds.Count)
            about = string.Create(CultureInfo.InvariantCulture, $"folds {first + 1} to {end} of {flat.Folds.Count}; {job.Readout.Size(blank.LengthMm, blank.WidthMm)}; seen from the face that is marked, width out of scale");
        sketch.Write(38, Page.Heading, about, Page.Small);

        var from = first == 0 ? 0 : Between(flat, first);
        var to = end == flat.Folds.Count ? blank.LengthMm : Between(flat, end);
        var folds = flat.Folds.Skip(first).Take(end - first).ToArray();
        var bottom = Pole.Draw(
            sketch, Page.Heading + 2, (from, to), blank.WidthMm, Columns(job), [.. folds.Select(fold => RowOf(job, flat, fold))], pole =>
            {
                if (isTaper)
                    pole.StraightEdges(from, to);
                Edges(pole, flat, from, to);
                foreach (var fold in folds)
                    Lines(pole, fold);
                if (flat.DatumMm >= from && flat.DatumMm <= to)
                    DatumMark(sketch, pole, job, flat.DatumMm);
            },
            isTaper ? TaperHeight * (end - first) / flat.Folds.Count : 0);
        Pole.NameUpperEdge(
            sketch, Page.Heading + 5.3 + PoleColumn.GroupsHeight(Columns(job)), first == 0 ? "lead-in edge" : "continued", isTaper);
        sketch.Write(Pole.BlankWidth / 2, bottom + 3.2, end == flat.Folds.Count ? "lead-out edge" : "continued", Page.Small, Anchor.Middle);
        if (isTaper && end == flat.Folds.Count)
            bottom = AboutTaper(sketch, job, bottom + 3.2);
        if (first == 0)
            sketch.Add([new View("form-blank", new(-7, Page.Heading + 2), new(isTaper ? 96 : 86, bottom + 4))], default);
        return new(bottom + 4, sketch.Items);
    }

    // How the marks are used: they lie on the edges of the sheet, and the outline is cut after.
    private static double AboutTaper(Sketch sketch, DrawingJob job, double y)
    {
        y += 1;
        var about = $"Marks and sight lines are on the long edges of a straight-edged sheet of this size, from {HeadBlock.CornersOf(job.Marks.Datum)}: "
            + "join left and right, then cut the outline below. Set the sight line (dashed) under the nose, lead-in side clamped.";
        foreach (var line in Paragraph.Lines(about, Page.Width, Page.Small))
            sketch.Write(0, y += Page.SmallLine, line, Page.Small);
        return y;
    }

    private static PoleColumn[] Columns(DrawingJob job)
    {
        var exact = $"exact {job.Readout.LengthName}";
        var tape = job.Readout.TapeName;
        var (marks, sights) = ($"mark, tape {tape}", $"sight, tape {tape}");
        return job.Plan.Taper is null
            ?
            [
                new("fold", 64, Anchor.End, IsBold: true),
                new("mark", 84, Anchor.End, IsBold: true, Group: $"tape {tape}"),
                new("centre", 102, Group: exact),
                new("sight", 119, Group: job.Readout.IsToTheTape ? $"tape {tape}" : exact),
                new("angle", 135),
                new("stop", Page.Width),
            ]
            :
            [
                new("fold", 64, Anchor.End, IsBold: true),
                new("left", 79, Anchor.End, IsBold: true, Group: marks),
                new("right", 94, Anchor.End, IsBold: true, Group: marks),
                new("left", 109, Group: sights),
                new("right", 123, Group: sights),
                new("angle", 136),
                new("stop", Page.Width),
            ];
    }

    private static PoleRow RowOf(DrawingJob job, FormBlankLines flat, FoldLines fold)
    {
        var sight = (Far: flat.FromDatum(fold.Sight.CrossingAt(0)), Near: flat.FromDatum(fold.Sight.CrossingAt(flat.WidthMm)));
        var (station, number) = (fold.Station, fold.Station.Number.ToString(CultureInfo.InvariantCulture));
        string[] places = station.Line is { } line
            ? [line.MarkFar.Text, station.MarkText, job.Readout.OnTape(sight.Far), job.Readout.OnTape(sight.Near)]
            : [station.MarkText, job.Readout.Length(station.AtMm), job.Readout.LaidOut(station.SightLineMm)];
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
        if (fold.Station.Line is not null)
            pole.OnToTheEdges(Pen.Leader, fold.Fold);
        if (pole.OnSheet(fold.Fold.DistanceTo(fold.FirstTangent)) > LeastGap)
        {
            pole.Across(Pen.Tangent, fold.FirstTangent);
            pole.Across(Pen.Tangent, fold.SecondTangent);
        }

        if (pole.OnSheet(fold.Fold.DistanceTo(fold.Sight)) <= (fold.Station.Line is null ? LeastGap : LeastTaperGap))
            return;
        pole.Across(Pen.Sight, fold.Sight);
        if (fold.Station.Line is not null)
            pole.OnToTheEdges(Pen.Sight, fold.Sight);
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
