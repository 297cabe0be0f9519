using System.Globalization;
using Forming.Drawing.Sheets;
using Forming.Layout;
using Forming.Materials;
using Forming.Outlook;
using Forming.Plans;
using Forming.Results;

namespace Forming.Drawing.Blocks;

/// <summary>Title, verdict, the two parts and the fingerprint.</summary>
internal static class HeadBlock
{
    private const double TitleSize = 5;
    private const double BadgeWidth = 38;
    private const double ColumnWidth = 72;
    private const double ValueAt = 17;

    /// <summary>Draws the head.</summary>
    /// <param name="job">The job.</param>
    public static Block Of(DrawingJob job) =>
        Of(job.Title, job.Given, job.Plan.Verdict, ("FORM", FormRows(job)), ("PANEL", PanelRows(job)), Conventions(job), job.Fingerprint);

    /// <summary>Draws a head.</summary>
    /// <param name="title">The title.</param>
    /// <param name="given">What the caller says of the job, or null.</param>
    /// <param name="verdict">The verdict.</param>
    /// <param name="left">Heading and rows of the left column.</param>
    /// <param name="right">Heading and rows of the right column.</param>
    /// <param name="conventions">How the sheet is to be read.</param>
    /// <param name="fingerprint">The fingerprint.</param>
    public static Block Of(
        string title,
        TitleBlock? given,
        PlanVerdict verdict,
        (string Heading, IEnumerable<(string Name, string Value)> Rows) left,
        (string Heading, IEnumerable<(string Name, string Value)> Rows) right,
        string conventions,
        string fingerprint)
    {
        var sketch = new Sketch();
        var y = TitleSize;
        foreach (var line in Paragraph.Lines(title, Page.Width - BadgeWidth - 4, TitleSize, isBold: true).Take(3))
        {
            sketch.Write(0, y, line, TitleSize, isBold: true);
            y += TitleSize * 1.2;
        }

        Badge(sketch, verdict);
        y += 1.5;
        sketch.Line(Pen.Outline, new(0, y - TitleSize * 0.8), new(Page.Width, y - TitleSize * 0.8));
        y = Given(sketch, [.. given?.Fields() ?? []], y - (TitleSize * 0.8)) + (TitleSize * 0.8);
        y = Math.Max(
            Column(sketch, 0, y, left.Heading, left.Rows), Column(sketch, Page.Width - ColumnWidth, y, right.Heading, right.Rows));
        sketch.Line(Pen.Leader, new(0, y - 2), new(Page.Width, y - 2));
        sketch.Write(0, y + 1, conventions, Page.Small - 0.2);
        sketch.Write(0, y + 4, fingerprint, Page.Small - 0.4);
        sketch.Line(Pen.Leader, new(0, y + 5.5), new(Page.Width, y + 5.5));
        return new(y + 5.5, sketch.Items, GapMm: 0);
    }

    // A ruled row of three fields, each below its name, as on a title block.
    private static double Given(Sketch sketch, (string Name, string Value)[] fields, double top)
    {
        const int columns = 3;
        const double width = Page.Width / columns;
        for (var first = 0; first < fields.Length; first += columns)
        {
            var row = fields.Skip(first).Take(columns)
                .Select(field => (field.Name, Lines: Paragraph.Lines(field.Value, width - 2, Page.Text, isBold: true)))
                .ToArray();
            var bottom = top + Page.SmallLine + (row.Max(field => field.Lines.Count) * Page.Row) + 1.2;
            for (var i = 0; i < row.Length; i++)
            {
                var (x, y) = ((i * width) + (i == 0 ? 0 : 1.5), top + Page.SmallLine);
                sketch.Write(x, y, row[i].Name, Page.Small - 0.3);
                foreach (var line in row[i].Lines)
                    sketch.Write(x, y += Page.Row, line, Page.Text, isBold: true);
                if (i > 0)
                    sketch.Line(Pen.Leader, new(i * width, top), new(i * width, bottom));
            }

            sketch.Line(Pen.Leader, new(0, bottom), new(Page.Width, bottom));
            top = bottom;
        }

        return top;
    }

    /// <summary>The verdict in words.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Words(PlanVerdict verdict) => verdict switch
    {
        PlanVerdict.Ready => "READY",
        PlanVerdict.Attention => "ATTENTION",
        _ => "CANNOT BE MADE",
    };

    private static void Badge(Sketch sketch, PlanVerdict verdict)
    {
        var isRefused = verdict == PlanVerdict.CannotBeMade;
        Point topLeft = new(Page.Width - BadgeWidth, 0), bottomRight = new(Page.Width, 6.5);
        sketch.Rectangle(Pen.Outline, topLeft, bottomRight, isRefused ? Tone.Ink : null);
        sketch.Write(new Label(
            new(Page.Width - (BadgeWidth / 2), 4.6),
            Words(verdict),
            3.6,
            Anchor.Middle,
            IsBold: true,
            isRefused ? Tone.Paper : Tone.Ink));
    }

    private static double Column(Sketch sketch, double x, double y, string heading, IEnumerable<(string Name, string Value)> rows)
    {
        sketch.Write(x, y, heading, Page.Text, isBold: true);
        foreach (var (name, value) in rows)
        {
            y += Page.Row;
            sketch.Write(x, y, name, Page.Small);
            var lines = Paragraph.Lines(value, ColumnWidth - ValueAt, Page.Text);
            for (var i = 0; i < Math.Min(2, lines.Count); i++)
            {
                y += i == 0 ? 0 : Page.Row;
                sketch.Write(x + ValueAt, y, i == 1 && lines.Count > 2 ? lines[i] + " …" : lines[i], Page.Text);
            }
        }

        return y + Page.Row;
    }

    private static IEnumerable<(string Name, string Value)> FormRows(DrawingJob job)
    {
        var (form, read) = (job.Plan.Form, job.Readout);
        yield return ("material", job.Form.Sheet.Material.Name);
        yield return ("thickness", $"{GaugeName(job.Job.FormGaugeSystem, job.Form.Sheet)}{read.LengthWithUnit(job.Form.Sheet.ThicknessMm)}, fold radius {read.LengthWithUnit(job.Form.FoldRadiusMm)}");
        yield return ("folds", string.Create(CultureInfo.InvariantCulture, $"{form.Stations.Count}, {(job.Plan.Taper is null ? "sweep" : "face turns")} {Readout.Degrees(form.Sweep)}"));
        yield return ("stop", Stop(form));
        yield return ("blank", $"{read.Size(form.Blank.LengthMm, form.Blank.WidthMm)}, {read.Mass(form.Blank.MassKg)}");
    }

    /// <summary>A gauge as it is ordered and stacked; empty for a sheet that was stated by its thickness.</summary>
    /// <param name="systemId">Id of the gauge table, or null.</param>
    /// <param name="sheet">The sheet.</param>
    public static string GaugeName(string? systemId, Sheet sheet) =>
        systemId is not null && Gauges.TryFind(systemId, out var system)
        && system.Thicknesses.FirstOrDefault(listed => Math.Abs(listed.Millimetres - sheet.ThicknessMm) < 1e-6) is { } gauge
            ? string.Create(CultureInfo.InvariantCulture, $"{gauge.Gauge} ga, ")
            : "";

    private static string Stop(PlannedForm form)
    {
        var settings = form.StopSettings switch
        {
            [var only] => $"{Readout.Degrees(only.Setting)} for every fold",
            var several => string.Create(CultureInfo.InvariantCulture, $"{several.Count} settings"),
        };
        return form.StopRounding is { } rounding ? $"{settings}, rounding {Readout.SignedDegrees(rounding)}" : settings;
    }

    private static IEnumerable<(string Name, string Value)> PanelRows(DrawingJob job)
    {
        var (panel, read) = (job.Plan.Panel, job.Readout);
        yield return ("material", job.Panel.Sheet.Material.Name);
        yield return ("thickness", $"{GaugeName(job.Job.PanelGaugeSystem, job.Panel.Sheet)}{read.LengthWithUnit(job.Panel.Sheet.ThicknessMm)}, finish {job.Panel.Finish.Name}");
        yield return ("springback", $"form overbent by {Readout.Degrees(panel.Springback.Overbend)}");
        if (panel.Outlook.Sweep is { } sweep)
            yield return ("comes off", ComesOff(panel.Outlook, sweep, read, job.Plan.Taper is null ? "" : "face turns "));
        yield return ("pull", job.Wording($"{Figure.Force(panel.Pull.ForceN)}") + $", {read.LaidOutWithUnit(panel.Pull.LeverMm)} past the curve");
        yield return ("clamp load", job.Wording($"{Figure.Force(panel.Pull.ClampLoadN)}"));
        yield return ("blank", $"{read.Size(panel.Blank.LengthMm, panel.Blank.WidthMm)}, {read.Mass(panel.Blank.MassKg)}{(job.Panel.Mirrored ? ", two curves" : "")}");
    }

    private static string ComesOff(PanelOutlook outlook, OutlookBand sweep, Readout read, string turns)
    {
        var value = string.Create(CultureInfo.InvariantCulture, $"{turns}{new Angle(sweep.Value).Degrees:F1}°");
        var band = $"{Readout.RoughDegrees(sweep.Low)} to {Readout.RoughDegrees(sweep.High)}";
        if (outlook.RadiusMm is { } radius)
        {
            value = $"R {read.RoughLength(radius.Value)}, {value}";
            band = $"R {read.RoughLength(radius.Low)} to {read.RoughLength(radius.High)}, {band}";
        }

        return $"{value}; {(outlook.AfterStrip is null ? "" : "without a strip ")}{band}";
    }

    private static string Conventions(DrawingJob job) =>
        $"Lengths in {(job.Units == LengthUnit.In ? "inches" : "millimetres")}. Folds measured from {DatumName(job.Marks.Datum)}; "
        + "mark the face that becomes the inside of the folds.";

    /// <summary>The datum of a tapered blank in words: its marks are on both long edges.</summary>
    /// <param name="datum">The datum.</param>
    public static string CornersOf(Datum datum) => datum switch
    {
        Datum.FarEdge => "the lower corners",
        Datum.Centre => "the middle, minus is upward",
        _ => "the upper corners",
    };

    /// <summary>The datum in words.</summary>
    /// <param name="datum">The datum.</param>
    public static string DatumName(Datum datum) => datum switch
    {
        Datum.FarEdge => "the lead-out edge",
        Datum.Centre => "the middle of the blank",
        _ => "the lead-in edge",
    };
}
