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
    public static IEnumerable<PdfPageLayout> Of(DrawingJob job, Paper paper)
    {
        var scale = paper.InnerWidth / Page.Width;
        var pages = SheetComposer.Pages(job, paper.InnerHeight / scale);
        for (var i = 0; i < pages.Count; i++)
        {
            var items = pages[i].Items.Select(item => item.Scaled(scale).Moved(new(Paper.Margin, Paper.Margin))).ToList();
            items.AddRange(Foot(job, paper, string.Create(CultureInfo.InvariantCulture, $"sheet {i + 1} of {pages.Count}")));
            yield return new(items, scale);
        }
    }

    /// <summary>The line at the foot of every page.</summary>
    /// <param name="job">The job.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="page">What page it is.</param>
    public static IEnumerable<SheetItem> Foot(DrawingJob job, Paper paper, string page)
    {
        const double size = 2.6;
        var y = paper.Height - Paper.Margin;
        var verdict = HeadBlock.Words(job.Plan.Verdict);
        var about = $"{verdict}. {job.Title}";
        yield return new Label(new(Paper.Margin, y), Paragraph.OneLine(about, paper.InnerWidth * 0.42, size), size);
        yield return new Label(new(paper.Width - Paper.Margin, y), page, size, Anchor.End, IsBold: true);
        yield return new Label(
            new(paper.Width - Paper.Margin - 30, y), Paragraph.OneLine(job.Fingerprint, paper.InnerWidth * 0.36, size - 0.4), size - 0.4, Anchor.End);
    }
}
