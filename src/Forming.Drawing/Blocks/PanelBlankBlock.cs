using System.Globalization;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>The flat panel blank with its registration marks.</summary>
internal static class PanelBlankBlock
{
    private const double NameWidth = 74;

    private const double TaperNameWidth = 52;

    /// <summary>A tapered blank is drawn so high that its curved edges can be seen [mm].</summary>
    private const double TaperHeight = 55;

    // A tick at each point of the ordinates, those numbered that have room.
    private static void Points(Sketch sketch, Pole pole, DrawingJob job)
    {
        const double tick = 0.8, size = 1.8;
        double leftBefore = double.NegativeInfinity, rightBefore = double.NegativeInfinity;
        foreach (var point in OutlineBlocks.PanelPoints(job))
        {
            Point left = pole.At(point.Left), right = pole.At(point.Right);
            sketch.Line(Pen.Fold, left - new Point(tick, 0), left + new Point(tick, 0));
            sketch.Line(Pen.Fold, right - new Point(tick, 0), right + new Point(tick, 0));
            if (!int.TryParse(point.Name, CultureInfo.InvariantCulture, out _))
                continue;
            leftBefore = Number(new(left.X + (2 * tick), left.Y), point.Name, Anchor.Start, leftBefore);
            rightBefore = Number(new(right.X - (2 * tick), right.Y), point.Name, Anchor.End, rightBefore);
        }

        double Number(Point at, string name, Anchor anchor, double before)
        {
            if (at.Y - before < size)
                return before;
            sketch.Write(at.X, at.Y + (0.36 * size), name, size, anchor);
            return at.Y;
        }
    }

    /// <summary>Draws the blank.</summary>
    /// <param name="job">The job.</param>
    public static Block Of(DrawingJob job)
    {
        var sketch = new Sketch();
        var blank = job.Plan.Panel.Blank;
        var isTaper = job.Plan.Taper is not null;
        // Seen from the inside face, which lies up under the form.
        var marks = MarkLine.Of(job).Select(mark => mark with { Line = mark.Line.TurnedOver(blank.WidthMm) }).ToArray();
        sketch.Write(0, Page.Heading, "Panel blank, flat", Page.Heading, isBold: true);
        sketch.Write(
            38,
            Page.Heading,
            $"{job.Readout.Size(blank.LengthMm, blank.WidthMm)}, {job.Readout.Mass(blank.MassKg)}; inside face up; {(isTaper ? "each mark along the cut edge from its lead-in corner" : "pencil or ink, never scribed")}",
            Page.Small);
        var unit = $"{(job.Readout.IsToTheTape ? "tape" : "exact")} {job.Readout.TapeName}";
        // The longest name decides how large all of them are.
        var widest = marks.Max(mark => Typeface.Regular.Width(mark.Mark.Name, Page.Text));
        var along = $"along the cut edge, {unit}";
        PoleColumn[] columns =
        [
            new("registration mark", 60, Anchor.Start, SizeMm: Page.Text * Math.Min(1, (isTaper ? TaperNameWidth : NameWidth) / widest)),
            .. isTaper
                ? (PoleColumn[])
                [
                    new("left", 130, Anchor.End, IsBold: true, Group: along),
                    new("right", Page.Width, Anchor.End, IsBold: true, Group: along),
                ]
                : [new($"from the lead-in edge, {unit}", Page.Width, Anchor.End, IsBold: true)],
        ];
        var edges = EdgeRuler.Both([.. blank.Outline.Select(point => point with { Y = blank.WidthMm - point.Y })]);
        var bottom = Pole.Draw(
            sketch,
            Page.Heading + 2,
            (0, blank.LengthMm),
            blank.WidthMm,
            columns,
            [.. marks.Select(mark => new PoleRow(mark.Line, [mark.Mark.Name, .. PlacesOf(mark)]))],
            pole =>
            {
                if (isTaper)
                    pole.StraightEdges(0, blank.LengthMm);
                pole.Outline(blank.Outline.Select(point => point with { Y = blank.WidthMm - point.Y }));
                foreach (var mark in marks)
                    pole.Across(Pen.Mark, mark.Line);
                if (isTaper)
                    Points(sketch, pole, job);
                if (job.Panel.Mirrored && job.Plan.Taper is null)
                    pole.Across(Pen.Centre, new(new(blank.LengthMm / 2, 0), new(blank.LengthMm / 2, blank.WidthMm)));
            },
            isTaper ? TaperHeight : 0);
        Pole.NameUpperEdge(sketch, Page.Heading + 5.3 + PoleColumn.GroupsHeight(columns), "lead-in edge", isTaper);
        sketch.Write(Pole.BlankWidth / 2, bottom + 3.2, job.Panel.Mirrored ? "lead-in edge of the second half" : "lead-out edge", Page.Small, Anchor.Middle);
        sketch.Add([new View("panel-blank", new(-4, Page.Heading + 1), new(Page.Width, bottom + 5))], default);
        return new(bottom + 4, sketch.Items);

        // Along the cut edges, each from its lead-in corner.
        string[] PlacesOf(MarkLine mark) => isTaper
            ? [job.Readout.LaidOut(edges.Far.AlongTo(mark.Line.Start)), job.Readout.LaidOut(edges.Near.AlongTo(mark.Line.End))]
            : [job.Readout.LaidOut(mark.Mark.AtMm)];
    }
}
