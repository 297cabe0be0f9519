using System.Globalization;
using Forming.Drawing.Sheets;
using Forming.TestStrips;

namespace Forming.Drawing.Blocks;

/// <summary>A page to fill in by hand: strips of the panel's sheet, and where to measure them.</summary>
/// <remarks>Columns are named as the fields of <c>/v1/test-strips</c>, so that whoever types them in need not translate.</remarks>
internal static class StripCard
{
    private const int Rows = 7;

    private const double RowHeight = 7.5;

    private static readonly (string Heading, string Field, double Width)[] Columns =
    [
        ("strip", "", 10),
        ("thickness", "thickness", 19),
        ("width", "width", 17),
        ("bar radius", "formRadius", 22),
        ("lever", "lever", 18),
        ("radius left", "finishedRadius", 24),
        ("sweep left", "finishedSweep", 22),
        ("facets show?", "verdict", 18),
    ];

    /// <summary>The blocks of the card.</summary>
    /// <param name="job">The job whose sheet is tried.</param>
    public static IEnumerable<Block> Of(DrawingJob job)
    {
        yield return Head(job);
        yield return StripPicture.Of();
        yield return Lines("How", How(job), isNumbered: true);
        yield return Table(job.Readout.LengthName);
        yield return Lines("Cautions", [.. StripSafety.OverTheForm.Select(note => job.Wording(note.Text))], isNumbered: false);
    }

    private static Block Head(DrawingJob job)
    {
        var sketch = new Sketch();
        sketch.Write(0, 5, "Strip card", 5, isBold: true);
        var y = 6.0;
        foreach (var line in Paragraph.Lines(job.About, Page.Width, Page.Text).Take(2))
            sketch.Write(0, y += Page.Row, line, Page.Text);
        var (sheet, read) = (job.Panel.Sheet, job.Readout);
        sketch.Write(0, y += Page.Row, $"Sheet: {sheet.Material.Name}, {read.LengthWithUnit(sheet.ThicknessMm)} as ordered", Page.Text, isBold: true);
        foreach (var line in Paragraph.Lines(Bars(job), Page.Width, Page.Text))
            sketch.Write(0, y += Page.Row, line, Page.Text);
        sketch.Write(0, y += Page.SmallLine, job.Fingerprint, Page.Small - 0.4);
        y += 1.5;
        sketch.Line(Pen.Leader, new(0, y), new(Page.Width, y));
        return new(y, sketch.Items, GapMm: 0);
    }

    private static string Bars(DrawingJob job)
    {
        double[] radii = [.. job.Plan.Form.Stations.Select(station => station.RadiusMm).OfType<double>()];
        if (radii.Length == 0)
            return "Pull the strips over the form itself.";
        var (least, most) = (job.Readout.RoughLength(radii.Min()), job.Readout.RoughLength(radii.Max()));
        var bar = least == most ? $"about {least}" : $"{least} to {most}";
        return $"Pull the strips round a bar or tube of {bar} {job.Readout.LengthName} outside radius, as the planned form has, or over the form itself.";
    }

    private static string[] How(DrawingJob job) =>
    [
        "Cut strips from the sheet the panel is made of, the same way of the grain; deburr them and write their width, for narrow ones spring back less.",
        "Measure the thickness with a micrometer at three places and write the mean: a thin sheet springs back like a strong one.",
        "Clamp one end, pull the strip down by a long straight bar until it lies round the whole bar or form, then ease it off. "
        + $"Lever: from the form's last fold to the bar you pull by [{job.Readout.LengthName}].",
        "Radius left, on the inside face, away from both ends (over a form from its third fold to the last but one): lay a straight edge of "
        + "length c across and measure the rise h in its middle. Radius = c × c / (8 × h) + h / 2.",
        "Sweep left: the angle between the two straight ends, how far one turns from the other. Over a form only.",
        "Look at the strip in the light the panel will be seen in, with its finish: smooth, or the facets show.",
    ];

    private static Block Lines(string heading, string[] texts, bool isNumbered)
    {
        var sketch = new Sketch();
        sketch.Write(0, Page.Heading, heading, Page.Heading, isBold: true);
        var y = Page.Heading + 1;
        for (var i = 0; i < texts.Length; i++)
        {
            var tag = isNumbered ? (i + 1).ToString(CultureInfo.InvariantCulture) : "–";
            var lines = Paragraph.Lines(texts[i], Page.Width - 5, Page.Small);
            sketch.Write(0, y + Page.SmallLine, tag, Page.Small, isBold: true);
            foreach (var line in lines)
                sketch.Write(5, y += Page.SmallLine, line, Page.Small);
        }

        return new(y + 1, sketch.Items, GapMm: 3);
    }

    private static Block Table(string lengthName)
    {
        var sketch = new Sketch();
        double x = 0, head = 9, bottom = head + (Rows * RowHeight);
        foreach (var (heading, field, width) in Columns)
        {
            var unit = field is "finishedSweep" ? " [°]" : field is "" or "verdict" ? "" : $" [{lengthName}]";
            sketch.Write(x + 1, 3.4, heading, Page.Small, isBold: true);
            sketch.Write(x + 1, 7, field + unit, Page.Small - 0.6);
            sketch.Line(Pen.Leader, new(x, 0), new(x, bottom));
            x += width;
        }

        for (var row = 0; row <= Rows; row++)
        {
            var y = head + (row * RowHeight);
            sketch.Line(row == 0 ? Pen.Outline : Pen.Leader, new(0, y), new(Page.Width, y));
            if (row < Rows)
                sketch.Write(Columns[0].Width / 2, y + 5, (row + 1).ToString(CultureInfo.InvariantCulture), Page.Text, Anchor.Middle);
        }

        sketch.Line(Pen.Leader, new(0, 0), new(Page.Width, 0));
        sketch.Line(Pen.Leader, new(Page.Width, 0), new(Page.Width, bottom));
        return new(bottom, sketch.Items, GapMm: 4);
    }
}
