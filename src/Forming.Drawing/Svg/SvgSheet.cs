using System.Text;
using Forming.Drawing.Blocks;

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
        var sheet = SheetComposer.Whole(job);
        var text = new Svg.SvgText();
        text.Open(Page.Width, sheet.HeightMm, job.Title, $"{HeadBlock.Words(job.Plan.Verdict)}. {Description(job)}");
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
        var sheet = SheetComposer.Stacked(ProgramBlocks.Of(job, double.PositiveInfinity));
        var text = new Svg.SvgText();
        text.Open(Page.Width, sheet.HeightMm, job.Heading, $"{HeadBlock.Words(job.Verdict)}. {Description(job)}");
        text.Add(sheet.Items);
        text.Close();
        stream.Write(Encoding.UTF8.GetBytes(text.ToString()));
    }

    private static string Description(ProgramJob job) => job.Only is { } step
        ? FormattableString.Invariant($"Step {step.Number} of {job.Program.Steps.Count}: gauge, stop and the brake in section. {job.Fingerprint}")
        : FormattableString.Invariant($"The brake in section at each of {job.Handlings().Count} handlings, {job.Program.Steps.Count} steps with gauge, stop and clearance, checks and cautions. {job.Fingerprint}");
}
