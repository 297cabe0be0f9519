using System.Globalization;
using System.Text;
using Forming.Drawing.Shapes;

namespace Forming.Drawing.Dxf;

/// <summary>Both flat blanks at 1:1 as a DXF file: the form blank at (0, 0), the panel blank below it.</summary>
public static class DxfLayout
{
    private const double GapMm = 120;
    private const double TextMm = 5;
    private const double NameMm = GapMm - (7 * TextMm);

    /// <summary>Writes the blanks, in the job's units.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <exception cref="Results.NoSolutionException"><c>drawing.cannot-be-made</c>: a check failed.</exception>
    public static void Write(DrawingJob job, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        job.RefuseUnlessItCanBeMade();
        var document = new DxfDocument();
        var down = new Point(0, -GapMm - job.Plan.Panel.Blank.WidthMm);
        Form(job, document);
        Panel(job, document, down);
        var far = new Point(
            Math.Max(job.Plan.Form.Blank.LengthMm, job.Plan.Panel.Blank.LengthMm), job.Plan.Form.Blank.WidthMm + (GapMm / 2));
        var text = document.Finish(job.Units == LengthUnit.In, InUnits(job, down), InUnits(job, far));
        stream.Write(Encoding.ASCII.GetBytes(text));
    }

    private static Point InUnits(DrawingJob job, Point point) => new(job.Readout.InUnit(point.X), job.Readout.InUnit(point.Y));

    private static void Form(DrawingJob job, DxfDocument document)
    {
        var flat = FormBlankLines.Of(job);
        document.Polygon(DxfLayer.Outline, [.. flat.Outline.Skip(1).Select(Place)]);
        var pitch = double.PositiveInfinity;
        for (var i = 1; i < flat.Folds.Count; i++)
            pitch = Math.Min(pitch, Math.Abs(flat.Folds[i].Fold.End.X - flat.Folds[i - 1].Fold.End.X));
        var height = Math.Min(TextMm, 0.6 * pitch);
        foreach (var fold in flat.Folds)
        {
            Line(DxfLayer.Fold, fold.Fold);
            Line(DxfLayer.Tangent, fold.FirstTangent);
            Line(DxfLayer.Tangent, fold.SecondTangent);
            Line(DxfLayer.Sight, fold.Sight);
            var text = string.Create(CultureInfo.InvariantCulture, $"{fold.Station.Number}   {fold.Station.MarkText}   {Readout.Degrees(fold.Station.FoldAngle)}");
            document.Text(Place(fold.Fold.End + new Point(height / 2, 4)), job.Readout.InUnit(height), text, 90);
        }

        Title(job, document, Point.Origin, $"Form blank: {job.Title}, {job.Form.Sheet.Material.Name}, {job.Readout.LengthWithUnit(job.Form.Sheet.ThicknessMm)}");

        Point Place(Point point) => InUnits(job, point);
        void Line(DxfLayer layer, Segment line) => document.Line(layer, Place(line.Start), Place(line.End));
    }

    private static void Panel(DrawingJob job, DxfDocument document, Point corner)
    {
        var panel = job.Plan.Panel;
        document.Polygon(DxfLayer.Outline, [.. panel.Blank.Outline.Skip(1).Select(Place)]);
        var text = double.NegativeInfinity;
        // Names run up from the panel towards the form's title; a stroke font's letters are about as wide as high.
        var height = Math.Min(0.7 * TextMm, NameMm / panel.Marks.Max(mark => mark.Name.Length));
        foreach (var (mark, line) in MarkLine.Of(job))
        {
            document.Line(DxfLayer.Mark, Place(line.Start), Place(line.End));
            text = Math.Max(line.CrossingAt(panel.Blank.WidthMm), text + (1.5 * TextMm));
            document.Text(Place(new(text + (TextMm / 2), panel.Blank.WidthMm + 4)), job.Readout.InUnit(height), mark.Name, 90);
        }

        Title(job, document, corner, $"Panel blank: {job.Title}, {job.Panel.Sheet.Material.Name}, {job.Readout.LengthWithUnit(job.Panel.Sheet.ThicknessMm)}");

        Point Place(Point point) => InUnits(job, point + corner);
    }

    private static void Title(DrawingJob job, DxfDocument document, Point corner, string title)
    {
        if (job.Plan.Taper is not null)
            title += ", seen from its outside face: marks belong on the other";
        document.Text(InUnits(job, corner - new Point(0, 2.5 * TextMm)), job.Readout.InUnit(TextMm), title);
        document.Text(InUnits(job, corner - new Point(0, 4 * TextMm)), job.Readout.InUnit(TextMm / 2), job.Fingerprint);
    }
}
