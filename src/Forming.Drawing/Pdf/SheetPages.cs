using System.Globalization;
using Forming.Drawing.Blocks;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Pdf;

/// <summary>The sheet, enlarged to the paper's width, over as many pages as it takes.</summary>
internal static class SheetPages
{
    /// <summary>How much smaller a sheet may be set where that saves a page, least first: type of 2.5 mm stays above 2.5 on A4.</summary>
    private static readonly double[] Smaller = [0.97, 0.94, 0.91, 0.88, 0.85, 0.82, 0.8];

    /// <summary>Heights of a page that are tried, so that the last one is not all but empty.</summary>
    private static readonly double[] Shorter = [0.95, 0.9, 0.85, 0.8, 0.75, 0.7];

    /// <summary>What the last page shows at least, where that can be, as a share of a page.</summary>
    private const double LeastOfLast = 0.2;

    /// <summary>Lays the pages out.</summary>
    /// <param name="job">The job.</param>
    /// <param name="paper">The paper.</param>
    public static IEnumerable<PdfPageLayout> Of(DrawingJob job, Paper paper) => Of(
        (height, enlarged) => [.. SheetComposer.Blocks(job, height, enlarged)],
        page => SheetComposer.Marked(job, page),
        paper,
        page => Foot(job, paper, page));

    /// <summary>Lays the pages of a program out.</summary>
    /// <param name="job">The program.</param>
    /// <param name="paper">The paper.</param>
    public static IEnumerable<PdfPageLayout> Of(ProgramJob job, Paper paper) => Of(
        (_, _) => [.. ProgramBlocks.Of(job)],
        page => page,
        paper,
        page => Foot($"{HeadBlock.Words(job.Verdict)}. {job.Heading}", job.Fingerprint, paper, page));

    /// <summary>Lays a card out.</summary>
    /// <param name="job">The job.</param>
    /// <param name="card">The card.</param>
    /// <param name="paper">The paper.</param>
    public static IEnumerable<PdfPageLayout> Of(DrawingJob job, Card card, Paper paper) =>
        Of((_, _) => [.. card.Blocks], page => page, paper, page => Foot(job, paper, page));

    /// <summary>The line at the foot of every page.</summary>
    /// <param name="job">The job.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="page">What page it is.</param>
    public static IEnumerable<SheetItem> Foot(DrawingJob job, Paper paper, string page) =>
        Foot($"{HeadBlock.Words(job.Plan.Verdict)}. {job.Title}", job.Fingerprint, paper, page);

    private static IEnumerable<PdfPageLayout> Of(
        Func<double, double, IReadOnlyList<Block>> blocksOf,
        Func<Block, Block> marked,
        Paper paper,
        Func<string, IEnumerable<SheetItem>> foot)
    {
        var full = paper.InnerWidth / Page.Width;
        var blocks = blocksOf(paper.InnerHeight / full, full);
        var scale = full * SizeThatSavesAPage(blocks, paper.InnerHeight / full);
        var height = paper.InnerHeight / scale;
        var pages = WithoutAnEmptyLast(scale < full ? blocksOf(height, scale) : blocks, height);
        var corner = new Point(Paper.Margin + ((paper.InnerWidth - (scale * Page.Width)) / 2), Paper.Margin);
        for (var i = 0; i < pages.Count; i++)
        {
            var items = marked(pages[i]).Items.Select(item => item.Scaled(scale).Moved(corner)).ToList();
            items.AddRange(foot(string.Create(CultureInfo.InvariantCulture, $"sheet {i + 1} of {pages.Count}")));
            yield return new(items, scale);
        }
    }

    private static double SizeThatSavesAPage(IReadOnlyList<Block> blocks, double height)
    {
        var count = SheetComposer.Pages(blocks, height).Count;
        return Smaller.FirstOrDefault(size => SheetComposer.Pages(blocks, height / size).Count < count, 1);
    }

    private static IReadOnlyList<Block> WithoutAnEmptyLast(IReadOnlyList<Block> blocks, double height)
    {
        var pages = SheetComposer.Pages(blocks, height);
        foreach (var share in Shorter)
        {
            if (pages.Count == 1 || pages[^1].HeightMm >= LeastOfLast * height)
                break;
            var evener = SheetComposer.Pages(blocks, share * height);
            if (evener.Count > pages.Count)
                break;
            pages = evener;
        }

        return pages;
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
