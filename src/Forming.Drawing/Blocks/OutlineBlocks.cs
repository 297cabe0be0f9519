using System.Globalization;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>How to cut and mark tapered blanks by hand: their outlines by ordinates from two edges of a straight-edged sheet.</summary>
internal static class OutlineBlocks
{
    /// <summary>Points along the curved edge of one bend, both tangent points among them.</summary>
    private const int PointsPerCurve = 9;

    private const string Lead = "lead";

    /// <summary>The tables of a taper; none for parallel folds, whose blanks are rectangles.</summary>
    /// <param name="job">The job.</param>
    /// <param name="mostHeight">Height that a part may have [mm].</param>
    public static IEnumerable<Block> Of(DrawingJob job, double mostHeight) => job.Plan.Taper is null
        ? []
        : [.. OfForm(job, mostHeight), .. OfPanel(job, mostHeight)];

    private static IEnumerable<Block> OfForm(DrawingJob job, double mostHeight)
    {
        var flat = FormBlankLines.Of(job).TurnedOver();
        var (near, far) = EdgeRuler.Both(flat.Outline);
        string[][] rows =
        [
            [Lead + "-in", .. Cells(job, far.Points[0], near.Points[0]), "", ""],
            .. flat.Folds.Select(fold => (string[])
            [
                fold.Station.Number.ToString(CultureInfo.InvariantCulture),
                .. Cells(job, fold.Fold.Start, fold.Fold.End),
                job.Readout.Length(fold.Sight.CrossingAt(0)),
                job.Readout.Length(fold.Sight.CrossingAt(flat.WidthMm)),
            ]),
            [Lead + "-out", .. Cells(job, far.Points[^1], near.Points[^1]), "", ""],
        ];
        return TableBlocks.Of(
            "Cut the form",
            "down from the upper edge, in from the left; straight between; sight lines at the sheet's edges",
            [.. Columns(job, "fold"), new("sight left", 126), new("sight right", Page.Width)],
            rows,
            new HashSet<int>(),
            mostHeight);
    }

    private static IEnumerable<Block> OfPanel(DrawingJob job, double mostHeight)
    {
        var blank = job.Plan.Panel.Blank;
        var (near, far) = EdgeRuler.Both([.. blank.Outline.Select(point => point with { Y = blank.WidthMm - point.Y })]);
        var isMirrored = job.Panel.Mirrored;
        var last = near.Points.Count - 1;
        var perCurve = (last - 1) / (isMirrored ? 2 : 1);
        string[][] rows =
        [
            Row(Lead + "-in", 0),
            .. Curve(1, 1),
            .. isMirrored ? Curve(1 + perCurve, 1 + PointsPerCurve) : [],
            Row(isMirrored ? Lead + "-in" : Lead + "-out", last),
        ];
        return TableBlocks.Of(
            "Cut the panel",
            isMirrored
                ? $"down from the upper edge, in from the left; curves 1 to {PointsPerCurve}, {PointsPerCurve + 1} to {2 * PointsPerCurve}; straight between"
                : "down from the upper edge, in from the left; a smooth curve through the numbers",
            Columns(job, "point"),
            rows,
            new HashSet<int>(),
            mostHeight);

        IEnumerable<string[]> Curve(int first, int number) => Enumerable.Range(0, PointsPerCurve).Select(i => Row(
            (number + i).ToString(CultureInfo.InvariantCulture),
            first + (int)Math.Round((perCurve - 1) * i / (PointsPerCurve - 1.0))));

        string[] Row(string name, int index) => [name, .. Cells(job, far.Points[index], near.Points[index])];
    }

    private static PoleColumn[] Columns(DrawingJob job, string first)
    {
        var unit = job.Readout.LengthName;
        return
        [
            new(first, 14, Anchor.End, IsBold: true),
            new($"left: down, {unit}", 42),
            new($"in, {unit}", 60),
            new($"right: down, {unit}", 86),
            new($"in, {unit}", 104),
        ];
    }

    // Turned over, the far edge is at the left.
    private static string[] Cells(DrawingJob job, Point left, Point right) =>
    [
        job.Readout.Length(left.X), job.Readout.Length(left.Y), job.Readout.Length(right.X), job.Readout.Length(right.Y),
    ];
}
