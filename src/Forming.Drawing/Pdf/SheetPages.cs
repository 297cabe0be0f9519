using System.Globalization;
using Forming.Drawing.Blocks;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Pdf;

/// <summary>The sheet, enlarged to the paper's width, over as many pages as it takes.</summary>
internal static class SheetPages
{
    /// <summary>Lays the pages out.</summary>
    /// <param name="job">The job.</param>
    /// <param name="paper">The paper.</param>
    public static IEnumerable<PdfPageLayout> Of(DrawingJob job, Paper paper) =>
        Of(SheetComposer.Pages(job, HeightOn(paper), paper.InnerWidth / Page.Width), paper, page => Foot(job, paper, page));

    /// <summary>Lays the pages of a program out.</summary>
    /// <param name="job">The program.</param>
    /// <param name="paper">The paper.</param>
    public static IEnumerable<PdfPageLayout> Of(ProgramJob job, Paper paper) => Of(
        SheetComposer.Pages([.. ProgramBlocks.Of(job, HeightOn(paper))], HeightOn(paper)),
        paper,
        page => Foot($"{HeadBlock.Words(job.Verdict)}. {job.Heading}", job.Fingerprint, paper, page));

    /// <summary>The line at the foot of every page.</summary>
    /// <param name="job">The job.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="page">What page it is.</param>
    public static IEnumerable<SheetItem> Foot(DrawingJob job, Paper paper, string page) =>
        Foot($"{HeadBlock.Words(job.Plan.Verdict)}. {job.Title}", job.Fingerprint, paper, page);

    private static double HeightOn(Paper paper) => paper.InnerHeight * Page.Width / paper.InnerWidth;

    private static IEnumerable<PdfPageLayout> Of(IReadOnlyList<Block> pages, Paper paper, Func<string, IEnumerable<SheetItem>> foot)
    {
        var scale = paper.InnerWidth / Page.Width;
        for (var i = 0; i < pages.Count; i++)
        {
            var items = pages[i].Items.Select(item => item.Scaled(scale).Moved(new(Paper.Margin, Paper.Margin))).ToList();
            items.AddRange(foot(string.Create(CultureInfo.InvariantCulture, $"sheet {i + 1} of {pages.Count}")));
            yield return new(items, scale);
        }
    }

    private static IEnumerable<SheetItem> Foot(string about, string fingerprint, Paper paper, string page)
    {
        const double size = 2.6;
        var y = paper.Height - Paper.Margin;
        yield return new Label(new(Paper.Margin, y), Paragraph.OneLine(about, paper.InnerWidth * 0.42, size), size);
        yield return new Label(new(paper.Width - Paper.Margin, y), page, size, Anchor.End, IsBold: true);
        yield return new Label(
            new(paper.Width - Paper.Margin - 30, y),
            Paragraph.OneLine(fingerprint, paper.InnerWidth * 0.36, size - 0.4),
            size - 0.4,
            Anchor.End);
    }
}
