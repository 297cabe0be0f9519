using System.Globalization;
using Forming.Curves;
using Forming.Drawing.Parts;
using Forming.Drawing.Sheets;
using Forming.Layout;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Drawing.Blocks;

/// <summary>A card to fill in by hand: what to measure on the form and on the panel that is off it, and where.</summary>
internal static class PanelCard
{
    private const double PictureHeight = 62;
    private const double BoxHeight = 7;
    private const double BoxWidth = 26;
    private const double FoldWidth = 37;
    private const double NumberMm = 5; // from a fold to its number

    /// <summary>Longest flat as a share of the curve's chord.</summary>
    private const double MostFlat = 0.4;

    /// <summary>Lays the card out.</summary>
    /// <param name="job">The job.</param>
    /// <exception cref="NoSolutionException"><c>drawing.no-such-part</c>: a tapered panel has none.</exception>
    public static IEnumerable<Block> Of(DrawingJob job)
    {
        if (job.Plan.Taper is not null)
            throw FlatParts.None($"a tapered panel has no card: its form is not corrected by what was measured on a panel", $"the sheet, or both blanks");
        var form = new StandingForm(
            [.. job.Plan.Form.Stations.SkipLast(1).Select(station => station.FacetAfterMm)],
            [.. job.Plan.Form.Stations.Select(station => station.FoldAngle.Radians)],
            job.Form.FoldRadiusMm + job.Form.Sheet.ThicknessMm);
        yield return Head(job);
        yield return Picture(job, form);
        yield return Readings(job, form);
        yield return Folds(job);
        yield return Notes();
    }

    private static Block Head(DrawingJob job)
    {
        var sketch = new Sketch();
        sketch.Write(0, 5, "Panel card", 5, isBold: true);
        var y = 5.0;
        foreach (var line in Paragraph.Lines($"{job.About}. {job.Fingerprint}", Page.Width, Page.Small).Take(2))
            sketch.Write(0, y += Page.SmallLine + 0.7, line, Page.Small);
        y += 8;
        (string Name, double X, double To)[] lines = [("Panel number", 0, 50), ("Coil", 54, 100), ("Date, name", 104, Page.Width)];
        foreach (var (name, x, to) in lines)
        {
            sketch.Write(x, y, name, Page.Small);
            sketch.Line(Pen.Leader, new(x + 19, y + 0.8), new(to, y + 0.8));
        }

        return new(y + 2, sketch.Items, GapMm: 0);
    }

    // The form by its mold lines, folds numbered, and the folds between which the radius is measured.
    private static Block Picture(DrawingJob job, StandingForm form)
    {
        var whole = FoldedPolygon.Of(job.Plan.Form.Stations, job.Form.LeadInMm).Vertices();
        var most = MostFlat * (whole[^2] - whole[1]).Length;
        Point[] corners = [Nearer(whole[0], whole[1], most), .. whole[1..^1], Nearer(whole[^1], whole[^2], most)];
        double left = corners.Min(point => point.X), right = corners.Max(point => point.X);
        double low = corners.Min(point => point.Y), high = corners.Max(point => point.Y);
        var air = 2 * NumberMm;
        var scale = Math.Min((Page.Width - (2 * air)) / (right - left), (PictureHeight - (2 * air)) / Math.Max(high - low, 1));
        var origin = new Point((Page.Width - (scale * (right - left))) / 2, PictureHeight - air);
        Point[] places = [.. corners.Select(point => origin + (scale * new Point(point.X - left, low - point.Y)))];
        var sketch = new Sketch();
        sketch.Line(Pen.Outline, places);
        for (var i = 1; i < places.Length - 1; i++)
        {
            var along = places[i + 1] - places[i - 1];
            var inward = -1 / along.Length * along.Left();
            var from = places[i] - (NumberMm * inward);
            var isEnd = i - 1 == form.MiddleFolds.From || i - 1 == form.MiddleFolds.To;
            sketch.Write(from.X, from.Y + 1, Number(i), Page.Small, Anchor.Middle, isEnd);
        }

        sketch.Write(places[0].X, places[0].Y - 1.5, "lead-in, clamped", Page.Small);
        return new(PictureHeight, sketch.Items);
    }

    private static Block Readings(DrawingJob job, StandingForm form)
    {
        var (readout, outcome) = (job.Readout, job.Plan.Panel.Prediction?.Shape);
        var (from, to) = (form.MiddleFolds.From + 1, form.MiddleFolds.To + 1);
        var face = job.Panel.Surface switch
        {
            Surface.Inside => "Inside",
            Surface.Outside => "Outside",
            _ => "Mean",
        };
        (string What, string Planned, string Field)[] rows =
        [
            ("Thickness, micrometer, at three places", readout.LengthWithUnit(job.Panel.Sheet.ThicknessMm), "panel.thickness"),
            ("Sweep, lead-in to lead-out, digital protractor", outcome is { } turned ? Readout.Degrees(turned.Sweep) : "", "measured.sweep"),
            (string.Create(CultureInfo.InvariantCulture, $"{face} radius between folds {from} and {to}, gauge"), outcome?.RadiusMm is { } radius ? readout.LengthWithUnit(radius) : "", "measured.radius"),
            ("Hand to the end of the curve", readout.LengthWithUnit(job.Plan.Panel.Pull.LeverMm), "panel.lever"),
        ];
        var sketch = new Sketch();
        var y = Page.Heading;
        sketch.Write(0, y, "On the panel, let go", Page.Heading, isBold: true);
        sketch.Write(87, y, "planned", Page.Small);
        sketch.Write(Page.Width - (2 * BoxWidth) + 8, y, "measured", Page.Small);
        foreach (var (what, planned, field) in rows)
        {
            y += BoxHeight + 1;
            sketch.Write(0, y - 2, what, Page.Small);
            sketch.Write(87, y - 2, planned, Page.Small);
            sketch.Rectangle(Pen.Outline, new(Page.Width - (2 * BoxWidth) + 5, y - BoxHeight + 1), new(Page.Width - BoxWidth + 2, y + 1));
            sketch.Write(Page.Width - BoxWidth + 4, y - 2, field, Page.Small - 0.4);
        }

        return new(y + 2, sketch.Items);
    }

    private static Block Folds(DrawingJob job)
    {
        var sketch = new Sketch();
        var y = Page.Heading;
        sketch.Write(0, y, "On the form, each fold (stations.angle)", Page.Heading, isBold: true);
        var columns = (int)(Page.Width / FoldWidth);
        var stations = job.Plan.Form.Stations;
        for (var i = 0; i < stations.Count; i++)
        {
            var x = i % columns * FoldWidth;
            if (i % columns == 0)
                y += BoxHeight + 1;
            sketch.Write(x, y - 2, $"{Number(i + 1)}: {Readout.Degrees(stations[i].FoldAngle)}", Page.Small);
            sketch.Rectangle(Pen.Outline, new(x + 17, y - BoxHeight + 1), new(x + 34, y + 1));
        }

        return new(y + 2, sketch.Items);
    }

    private static Block Notes()
    {
        var sketch = new Sketch();
        var y = 0.0;
        foreach (var text in (string[])
        [
            "Let the panel lie free before you measure, off clamp and form. Read each value twice.",
            "Read the sweep on the flats, away from the curve. Read the radius where the sheet lay between the folds named, at three places along the width, and write the mean.",
            "Then send it with the plan's request to /v1/panels/corrections: it answers which folds to change and what to plan with next.",
        ])
        {
            foreach (var line in Paragraph.Lines(text, Page.Width, Page.Small))
                sketch.Write(0, y += Page.SmallLine, line, Page.Small);
            y += 1;
        }

        return new(y + 1, sketch.Items);
    }

    private static Point Nearer(Point end, Point fold, double most)
    {
        var flat = end - fold;
        return flat.Length > most ? fold + (most / flat.Length * flat) : end;
    }

    private static string Number(int fold) => fold.ToString(CultureInfo.InvariantCulture);
}
