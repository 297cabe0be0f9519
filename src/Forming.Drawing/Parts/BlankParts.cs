using System.Globalization;
using Forming.Drawing.Shapes;
using Forming.Layout;

namespace Forming.Drawing.Parts;

/// <summary>Both flat blanks, seen from the face that may be marked: the one that ends up inside the bend.</summary>
internal static class BlankParts
{
    /// <summary>Width of a strip to mark by [mm].</summary>
    private const double StickMm = 15;

    private const string MarkedFace = "Seen from the inside face: mark this face in pencil or ink, never scribe or etch it, and put nothing on the contact face.";

    private const string PanelFace = "Seen from the inside face, which lies on the form: mark this face in pencil or ink, nothing on the outside.";

    /// <summary>The form blank.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart Form(DrawingJob job)
    {
        var flat = FormBlankLines.Of(job).TurnedOver();
        return new(
            "FORM",
            "Form blank",
            $"{MarkedFace} {DatumOf(job)}",
            [
                new(LineRole.Outline, [.. flat.Outline.Skip(1)], IsClosed: true),
                .. flat.Folds.SelectMany(fold => Lines(job, fold, flat.WidthMm)),
                .. job.Plan.Taper is null ? [] : Stock(flat),
            ],
            Edges(flat.Outline, "lead-out edge"),
            [],
            [],
            RunsDown: true);
    }

    /// <summary>A strip of a straight form blank along its edge, with every line.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart FormStick(DrawingJob job) => Stick(
        job,
        "FORM",
        job.Plan.Form.Blank.LengthMm,
        $"Lay the left edge along an edge of the form blank, its inside face up; mark both edges and join the marks. {DatumOf(job)}",
        FormBlankLines.Of(job).TurnedOver().Folds.SelectMany(fold => Lines(job, fold, StickMm)),
        "lead-out edge");

    /// <summary>The panel blank.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart Panel(DrawingJob job)
    {
        var blank = job.Plan.Panel.Blank;
        Point[] outline = [.. blank.Outline.Select(point => point with { Y = blank.WidthMm - point.Y })];
        return new(
            "PANEL",
            "Panel blank",
            job.Plan.Taper is null
                ? $"{PanelFace} Marks are from the lead-in edge."
                : $"{PanelFace} Marks are along each cut edge from its lead-in corner.",
            [new(LineRole.Outline, [.. outline.Skip(1)], IsClosed: true), .. Marks(job, line => line)],
            Edges(outline, PanelEnd(job)),
            [],
            [],
            RunsDown: true);
    }

    /// <summary>A strip of a straight panel blank along its edge, with every registration mark.</summary>
    /// <param name="job">The job.</param>
    public static FlatPart PanelStick(DrawingJob job) => Stick(
        job,
        "PANEL",
        job.Plan.Panel.Blank.LengthMm,
        "Lay the left edge along an edge of the panel blank, its inside face up; mark both edges. Nothing on the outside face. Marks are from the lead-in edge.",
        Marks(job, line => OnStick(line, StickMm)),
        PanelEnd(job));

    private static FlatPart Stick(
        DrawingJob job, string kind, double lengthMm, string about, IEnumerable<PartLine> lines, string end)
    {
        PartLine[] shown = [.. lines];
        return new(
            kind,
            $"Story stick of the {(kind == "FORM" ? "form" : "panel")} blank",
            about,
            [
                new(LineRole.Outline, [new(0, 0), new(lengthMm, 0)]),
                PartLine.Of(LineRole.Outline, Across(0), new("lead-in edge", "")),
                .. shown,
                PartLine.Of(LineRole.Outline, Across(lengthMm), new(end, $"length {job.Readout.LaidOutWithUnit(lengthMm)}")),
            ],
            [new("this edge on the blank's", [new(0, 0), new(shown.Min(line => line.Points[0].X), 0)])],
            [],
            [],
            RunsDown: true,
            LabelsBeside: true);

        static Segment Across(double x) => new(new(x, 0), new(x, StickMm));
    }

    private static IEnumerable<PartLine> Stock(FormBlankLines flat) =>
        [new(LineRole.Stock, [new(0, 0), new(0, flat.WidthMm), new(flat.LengthMm, flat.WidthMm), new(flat.LengthMm, 0)], IsClosed: true)];

    private static string PanelEnd(DrawingJob job) => job.Panel.Mirrored ? "lead-in edge of the second half" : "lead-out edge";

    private static string DatumOf(DrawingJob job)
    {
        var from = job.Marks.Datum switch
        {
            Datum.FarEdge => "from the lead-out edge",
            Datum.Centre => "from the middle, towards the lead-in with a minus",
            _ => "from the lead-in edge",
        };
        return job.Plan.Taper is null
            ? $"Marks are {from}."
            : $"Marks are on the long edges of the sheet to cut it from, {from} of that sheet.";
    }

    private static IEnumerable<PartLine> Lines(DrawingJob job, FoldLines fold, double widthMm)
    {
        var station = fold.Station;
        var number = station.Number.ToString(CultureInfo.InvariantCulture);
        var (place, sight) = station.Line is { } line
            ? ($"left {line.MarkFar.Text}, right {station.MarkText}", "")
            : ($"mark {station.MarkText}", $"sight {job.Readout.LaidOut(station.SightLineMm)}, ");
        var label = new LineLabel(
            number, place, $"{sight}fold {Readout.Degrees(station.FoldAngle)}, stop {Readout.Degrees(station.StopSetting)}", station.Number);
        yield return PartLine.Of(LineRole.Fold, OnStick(fold.Fold, widthMm), label);
        yield return PartLine.Of(LineRole.Tangent, OnStick(fold.FirstTangent, widthMm));
        yield return PartLine.Of(LineRole.Tangent, OnStick(fold.SecondTangent, widthMm));
        yield return PartLine.Of(LineRole.Sight, OnStick(fold.Sight, widthMm));
    }

    private static IEnumerable<PartLine> Marks(DrawingJob job, Func<Segment, Segment> shown)
    {
        var blank = job.Plan.Panel.Blank;
        var (near, far) = EdgeRuler.Both([.. blank.Outline.Select(point => point with { Y = blank.WidthMm - point.Y })]);
        foreach (var (mark, line) in MarkLine.Of(job))
        {
            var turned = line.TurnedOver(blank.WidthMm);
            var place = job.Plan.Taper is null
                ? job.Readout.LaidOut(mark.AtMm)
                : $"left {job.Readout.LaidOut(far.AlongTo(turned.Start))}, right {job.Readout.LaidOut(near.AlongTo(turned.End))}";
            yield return PartLine.Of(LineRole.Mark, shown(turned), new(mark.Name, place));
        }
    }

    // Lines of a straight blank run square across.
    private static Segment OnStick(Segment line, double widthMm) =>
        line.End.Y > widthMm ? new(line.Start, new(line.End.X, widthMm)) : line;

    private static NamedEdge[] Edges(IReadOnlyList<Point> outline, string end)
    {
        var (near, far) = EdgeRuler.Both(outline);
        return
        [
            new("left edge", far.Points),
            new("right edge", near.Points),
            new("lead-in edge", [far.Points[0], near.Points[0]]),
            new(end, [far.Points[^1], near.Points[^1]]),
        ];
    }
}
