using System.Text;
using Forming.Drawing.Parts;

namespace Forming.Drawing.Dxf;

/// <summary>
/// Parts at 1:1 as a DXF file, each line on the layer of its part and purpose; the first part at (0, 0), the next below it.
/// </summary>
public static class DxfLayout
{
    private const double GapMm = 40;
    private const double TextMm = 5;

    /// <summary>Writes both blanks, in the job's units.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <exception cref="Results.NoSolutionException"><c>drawing.cannot-be-made</c>: a check failed.</exception>
    public static void Write(DrawingJob job, Stream stream) => Write(job, [DrawingPart.FormBlank, DrawingPart.PanelBlank], stream);

    /// <summary>Writes one part, in the job's units.</summary>
    /// <param name="job">The job.</param>
    /// <param name="part">The part.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <exception cref="Results.NoSolutionException">
    /// <c>drawing.cannot-be-made</c>: a check failed; <c>drawing.no-such-part</c>: this job has no such part.
    /// </exception>
    public static void Write(DrawingJob job, DrawingPart part, Stream stream) => Write(job, [part], stream);

    private static void Write(DrawingJob job, IReadOnlyList<DrawingPart> parts, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        job.RefuseUnlessItCanBeMade();
        var document = new DxfDocument();
        Point least = Point.Origin, most = Point.Origin;
        double? bottom = null;
        foreach (var part in parts)
        {
            var shown = WithLabels.Of(FlatParts.Of(job, part));
            foreach (var copy in shown.Copies.DefaultIfEmpty(""))
            {
                var (low, high) = (shown.Least, shown.Most);
                var corner = bottom is { } above ? new Point(0, above - high.Y) : Point.Origin;
                Draw(job, document, shown, copy, corner);
                bottom = corner.Y + low.Y - (5 * TextMm) - GapMm;
                least = new(Math.Min(least.X, low.X), corner.Y + low.Y - (5 * TextMm));
                most = new(Math.Max(most.X, high.X), Math.Max(most.Y, corner.Y + high.Y));
            }
        }

        var text = document.Finish(job.Units == LengthUnit.In, InUnits(job, least), InUnits(job, most));
        stream.Write(Encoding.ASCII.GetBytes(text));
    }

    private static Point InUnits(DrawingJob job, Point point) => new(job.Readout.InUnit(point.X), job.Readout.InUnit(point.Y));

    private static void Draw(DrawingJob job, DxfDocument document, FlatPart part, string copy, Point corner)
    {
        foreach (var line in part.Lines)
        {
            var layer = DxfLayer.Of(part, line.Role);
            if (line.IsClosed)
                document.Polygon(layer, [.. line.Points.Select(Place)]);
            else
                document.Line(layer, Place(line.Points[0]), Place(line.Points[^1]));
        }

        var words = DxfLayer.TextOf(part);
        foreach (var note in part.Notes)
        {
            // A stroke font's letters are about as wide as high, so its words are set smaller than those of a sheet.
            document.Text(words, Place(note.Start()), job.Readout.InUnit(0.72 * note.SizeMm), note.Text, note.TurnDegrees);
        }

        var foot = new Point(part.Least.X, part.Least.Y - (1.5 * TextMm));
        var name = copy.Length > 0 ? $"{part.Name}, {copy}" : part.Name;
        string[] lines = [$"{name}: {job.About}", SheetOf(job, part), part.About, job.Fingerprint];
        foreach (var line in lines.Where(line => line.Length > 0))
        {
            document.Text(words, Place(foot), job.Readout.InUnit(TextMm / 2), line);
            foot -= new Point(0, TextMm);
        }

        Point Place(Point point) => InUnits(job, point + corner);
    }

    private static string SheetOf(DrawingJob job, FlatPart part)
    {
        var sheet = part.Kind switch { "FORM" => job.Form.Sheet, "PANEL" => job.Panel.Sheet, _ => null };
        return sheet is null ? "" : $"{sheet.Material.Name}, {job.Readout.LengthWithUnit(sheet.ThicknessMm)}";
    }
}
