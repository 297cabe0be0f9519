using System.Globalization;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>One fold of the flat blank, enlarged, so that lines a hair apart can be seen as two.</summary>
internal static class FoldDetail
{
    private const double StripWidth = 13;
    private const double StripHeight = 24;

    /// <summary>Draws the widest fold.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="job">The job.</param>
    /// <param name="x">Left edge [mm].</param>
    /// <param name="y">Baseline of its heading [mm].</param>
    /// <returns>Lower edge [mm].</returns>
    public static double Draw(Sketch sketch, DrawingJob job, double x, double y)
    {
        var fold = FormBlankLines.Of(job).Folds.MaxBy(lines => lines.Station.FoldAngle)!;
        sketch.Write(x, y, string.Create(CultureInfo.InvariantCulture, $"Lines of fold {fold.Station.Number}, enlarged"), Page.Small, isBold: true);
        (Pen Pen, double At, string Name)[] lines =
        [
            (Pen.Tangent, fold.Fold.DistanceTo(fold.FirstTangent), "tangent line"),
            (Pen.Fold, 0, "fold, centre"),
            (Pen.Tangent, fold.Fold.DistanceTo(fold.SecondTangent), "tangent line"),
            (Pen.Sight, fold.Fold.DistanceTo(fold.Sight), "sight line"),
        ];
        Array.Sort(lines, (a, b) => a.At.CompareTo(b.At));
        double top = y + 2, first = lines[0].At, last = lines[^1].At;
        var scale = StripHeight * 0.7 / Math.Max(last - first, 1e-6);
        var places = lines.Select(line => top + (StripHeight * 0.15) + ((line.At - first) * scale)).ToArray();
        sketch.Line(Pen.Outline, new(x, top), new(x, top + StripHeight));
        sketch.Line(Pen.Outline, new(x + StripWidth, top), new(x + StripWidth, top + StripHeight));
        var rows = LabelSpacing.Apart(places, Page.SmallLine, top + 1, top + StripHeight - 1);
        for (var i = 0; i < lines.Length; i++)
        {
            sketch.Line(lines[i].Pen, new(x, places[i]), new(x + StripWidth, places[i]));
            sketch.Line(
                Pen.Leader,
                [
                    new(x + StripWidth, places[i]),
                    new(x + StripWidth + 1.5, places[i]),
                    new(x + StripWidth + 4.5, rows[i]),
                    new(x + StripWidth + 5.5, rows[i]),
                ]);
            sketch.Write(x + StripWidth + 6.5, rows[i] + 0.9, lines[i].Name, Page.Small);
        }

        sketch.Write(
            x, top + StripHeight + 3.2, $"between tangents {job.Readout.LengthWithUnit(Math.Abs(fold.FirstTangent.DistanceTo(fold.SecondTangent)))}", Page.Small);
        return top + StripHeight + 4;
    }
}
