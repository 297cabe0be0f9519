using System.Globalization;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>A point on either cut edge of a blank, as it is drawn.</summary>
/// <param name="Name">Its number, or the lead's name.</param>
/// <param name="Left">On the left edge [mm].</param>
/// <param name="Right">On the right edge [mm].</param>
internal sealed record OutlinePoint(string Name, Point Left, Point Right);

/// <summary>How to cut and mark tapered blanks by hand: their outlines by ordinates from two edges of a straight-edged sheet.</summary>
internal static class OutlineBlocks
{
    /// <summary>Points along the curved edge of one bend, both tangent points among them.</summary>
    private const int PointsPerCurve = 9;

    private const string Lead = "lead";

    /// <summary>The tables of a taper; none for parallel folds, whose blanks are rectangles.</summary>
    /// <param name="job">The job.</param>
    public static IEnumerable<Block> Of(DrawingJob job) => job.Plan.Taper is null
        ? []
        : [OfForm(job), OfPanel(job)];

    private static Block OfForm(DrawingJob job)
    {
        var flat = FormBlankLines.Of(job).TurnedOver();
        var (near, far) = EdgeRuler.Both(flat.Outline);
        // On the tape they are the marks of the blank already.
        PoleColumn[] exact = job.Readout.IsToTheTape
            ? []
            :
            [
                new("left", 105, Group: "fold at the sheet's edges"),
                new("right", 119, Group: "fold at the sheet's edges"),
                new("left", 136, Group: "sight line there"),
                new("right", Page.Width, Group: "sight line there"),
            ];
        string[] none = [.. exact.Select(_ => "")];
        string[][] rows =
        [
            [Lead + "-in", .. Cells(job, far.Points[0], near.Points[0]), .. none],
            .. flat.Folds.Select(fold => (string[])
            [
                fold.Station.Number.ToString(CultureInfo.InvariantCulture),
                .. Cells(job, fold.Fold.Start, fold.Fold.End),
                .. AtTheEdges(fold.Fold),
                .. AtTheEdges(fold.Sight),
            ]),
            [Lead + "-out", .. Cells(job, far.Points[^1], near.Points[^1]), .. none],
        ];
        return TableBlocks.Of(
            "Cut the form",
            $"{Ordinates(job)}; straight between",
            [.. Columns("fold"), .. exact],
            rows,
            new HashSet<int>());

        string[] AtTheEdges(Segment line) => exact.Length == 0
            ? []
            : [job.Readout.LaidOut(line.CrossingAt(0)), job.Readout.LaidOut(line.CrossingAt(flat.WidthMm))];
    }

    private static string Ordinates(DrawingJob job) =>
        $"{(job.Readout.IsToTheTape ? "tape" : "exact")} {job.Readout.TapeName}, down from the sheet's upper edge, in from its left";

    private static Block OfPanel(DrawingJob job)
    {
        var isMirrored = job.Panel.Mirrored;
        string[][] rows = [.. PanelPoints(job).Select(point => (string[])[point.Name, .. Cells(job, point.Left, point.Right)])];
        return TableBlocks.Of(
            "Cut the panel",
            isMirrored
                ? $"{Ordinates(job)}; smooth through 1 to {PointsPerCurve}, {PointsPerCurve + 1} to {2 * PointsPerCurve}"
                : $"{Ordinates(job)}; smooth through the numbers",
            Columns("point"),
            rows,
            new HashSet<int>());
    }

    /// <summary>The points by which a tapered panel is cut, in order, on the blank as it is drawn.</summary>
    /// <param name="job">The job.</param>
    public static IEnumerable<OutlinePoint> PanelPoints(DrawingJob job)
    {
        var blank = job.Plan.Panel.Blank;
        var (near, far) = EdgeRuler.Both([.. blank.Outline.Select(point => point with { Y = blank.WidthMm - point.Y })]);
        var isMirrored = job.Panel.Mirrored;
        var last = near.Points.Count - 1;
        var perCurve = (last - 1) / (isMirrored ? 2 : 1);
        return
        [
            At(Lead + "-in", 0),
            .. Curve(1, 1),
            .. isMirrored ? Curve(1 + perCurve, 1 + PointsPerCurve) : [],
            At(isMirrored ? Lead + "-in" : Lead + "-out", last),
        ];

        IEnumerable<OutlinePoint> Curve(int first, int number) => Enumerable.Range(0, PointsPerCurve).Select(i => At(
            (number + i).ToString(CultureInfo.InvariantCulture),
            first + (int)Math.Round((perCurve - 1) * i / (PointsPerCurve - 1.0))));

        OutlinePoint At(string name, int index) => new(name, far.Points[index], near.Points[index]);
    }

    private static PoleColumn[] Columns(string first) =>
    [
        new(first, 14, Anchor.End, IsBold: true),
        new("down", 32, Group: "left side"),
        new("in", 48, Group: "left side"),
        new("down", 69, Group: "right side"),
        new("in", 85, Group: "right side"),
    ];

    // Turned over, the far edge is at the left.
    private static string[] Cells(DrawingJob job, Point left, Point right) =>
    [
        job.Readout.LaidOut(left.X), job.Readout.LaidOut(left.Y), job.Readout.LaidOut(right.X), job.Readout.LaidOut(right.Y),
    ];
}
