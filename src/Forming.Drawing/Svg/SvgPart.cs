using System.Text;
using Forming.Drawing.Blocks;
using Forming.Drawing.Parts;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Svg;

/// <summary>One part at 1:1 as an SVG picture in one piece, its width and height in millimetres.</summary>
public static class SvgPart
{
    private const double GapMm = 10;
    private const double HeadMm = 24;
    private const double LeastWidthMm = 150;

    /// <summary>Writes the part; a plan that cannot be made is drawn and marked so.</summary>
    /// <param name="job">The job.</param>
    /// <param name="part">The part.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <exception cref="Results.NoSolutionException"><c>drawing.no-such-part</c>: this job has no such part.</exception>
    public static void Write(DrawingJob job, DrawingPart part, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        if (Card.Of(job, part) is { } card)
        {
            var printed = PrintedPage.Of(job.Units);
            var page = printed.Joined(SheetComposer.Pages([.. card.Blocks], printed.InnerHeight));
            SvgSheet.Write(stream, printed, $"{card.Name}: {job.Title}", $"{card.About} {job.Fingerprint}", page);
            return;
        }

        var shown = WithLabels.Of(FlatParts.Of(job, part));
        Point least = shown.Least, most = shown.Most, size = most - least;
        var width = Math.Max(LeastWidthMm, size.X);
        var sketch = new Sketch();
        sketch.Write(0, 4, $"{shown.Name} 1:1", 4, isBold: true);
        var y = 8.5;
        foreach (var line in Paragraph.Lines($"{job.About}. {shown.About} {job.Fingerprint}", width, 2.6).Take(3))
        {
            sketch.Write(0, y, line, 2.6);
            y += 3.6;
        }

        PartSketch.Legend(sketch, shown, new(0, HeadMm - 4));
        y = HeadMm;
        foreach (var copy in shown.Copies.DefaultIfEmpty(""))
        {
            if (copy.Length > 0)
                sketch.Write(0, y += 4, copy, 3.2, isBold: true);
            y += 2;
            Copy(sketch, shown, point => new(point.X - least.X, y + most.Y - point.Y));
            y += size.Y + GapMm;
        }

        PartSketch.Square(sketch, job, new(0, y));
        y += PartSketch.SquareMm(job);
        var text = new SvgText();
        text.Open(width, y, $"{shown.Name}: {job.Title}", $"{HeadBlock.Words(job.Plan.Verdict)}. {shown.About} {job.Fingerprint}", style: null);
        text.Add([.. SheetComposer.Ghosts(job, width, y), .. sketch.Items]);
        text.Close();
        stream.Write(Encoding.UTF8.GetBytes(text.ToString()));
    }

    private static void Copy(Sketch sketch, FlatPart part, Func<Point, Point> place)
    {
        foreach (var line in part.Lines)
        {
            if (line.IsClosed)
                sketch.Polygon(PartSketch.PenOf(line.Role), [.. line.Points.Select(place)]);
            else
                sketch.Line(PartSketch.PenOf(line.Role), [.. line.Points.Select(place)]);
        }

        foreach (var note in part.Notes)
        {
            sketch.Write(new Label(
                place(note.At), note.Text, note.SizeMm, note.IsMiddle ? Anchor.Middle : Anchor.Start, TurnDegrees: -note.TurnDegrees));
        }
    }
}
