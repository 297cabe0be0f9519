using System.Text;
using Forming.Drawing.Blocks;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Svg;

/// <summary>The sheet as one SVG picture.</summary>
public static class SvgSheet
{
    /// <summary>Writes the sheet; a plan that cannot be made is drawn and marked so.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stream">Where to write; stays open.</param>
    public static void Write(DrawingJob job, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        var printed = PrintedPage.Of(job.Units);
        var sheet = SheetComposer.Marked(job, printed.Joined(SheetComposer.Pages(job, printed.InnerHeight)));
        Write(stream, printed, job.Title, $"{HeadBlock.Words(job.Plan.Verdict)}. {Description(job)}", sheet);
    }

    /// <summary>Writes a picture.</summary>
    /// <param name="stream">Where to write; stays open.</param>
    /// <param name="printed">The page it is printed on.</param>
    /// <param name="title">Its title.</param>
    /// <param name="description">What it shows.</param>
    /// <param name="sheet">What is drawn.</param>
    internal static void Write(Stream stream, PrintedPage printed, string title, string description, Block sheet)
    {
        var text = new Svg.SvgText();
        text.Open(Page.Width, sheet.HeightMm, title, description, printed.Rule);
        text.Add(sheet.Items);
        text.Close();
        stream.Write(Encoding.UTF8.GetBytes(text.ToString()));
    }

    private static string Description(DrawingJob job) => FormattableString.Invariant(
        $"Section, flat form blank with {job.Plan.Form.Stations.Count} numbered fold lines, panel blank with its marks, checks and cautions. {job.Fingerprint}");
}

/// <summary>The sheet of a program as one SVG picture.</summary>
public static class ProgramSvgSheet
{
    /// <summary>Writes the sheet.</summary>
    /// <param name="job">The program.</param>
    /// <param name="stream">Where to write; stays open.</param>
    public static void Write(ProgramJob job, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        var printed = PrintedPage.Of(job.Units);
        var pages = SheetComposer.Pages([.. ProgramBlocks.Of(job)], printed.InnerHeight);
        SvgSheet.Write(stream, printed, job.Heading, $"{HeadBlock.Words(job.Verdict)}. {Description(job)}", printed.Joined(pages));
    }

    private static string Description(ProgramJob job) => job.Only is { } step
        ? FormattableString.Invariant($"Step {step.Number} of {job.Program.Steps.Count}: gauge, stop and the brake in section. {job.Fingerprint}")
        : FormattableString.Invariant($"The brake in section at each of {job.Pictured().Count} handlings and changes of the stop, {job.Program.Steps.Count} steps with gauge, stop and clearance, checks and cautions. {job.Fingerprint}");
}
