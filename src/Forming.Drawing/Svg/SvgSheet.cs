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
