using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>Puts a job's blocks together: in one tall sheet, or over pages.</summary>
internal static class SheetComposer
{
    private const double GhostPitch = 105;
    private const double GhostSize = 15;

    /// <summary>The sheet over pages of a height; only a block higher than a page makes its own page higher.</summary>
    /// <param name="job">The job.</param>
    /// <param name="height">Height of a page [mm].</param>
    public static IReadOnlyList<Block> Pages(DrawingJob job, double height) => Pages([.. Blocks(job, height, null)], height);

    /// <summary>Blocks over pages of a height; only a block higher than a page makes its own page higher.</summary>
    /// <param name="blocks">The blocks.</param>
    /// <param name="height">Height of a page [mm].</param>
    public static IReadOnlyList<Block> Pages(IReadOnlyList<Block> blocks, double height)
    {
        var pages = new List<Block>();
        var page = new List<Block>();
        var rest = new Stack<Block>(blocks.Reverse());
        double used = 0;
        while (rest.TryPop(out var block))
        {
            var needed = block.GapMm + block.HeightMm;
            var ahead = block.StaysWithNext && rest.TryPeek(out var next) ? next.GapMm + next.HeightMm : 0;
            if (used + needed + ahead <= height)
            {
                Put(block);
            }
            else if (block.Split?.Invoke(height - used - block.GapMm) is var (head, tail))
            {
                Put(head);
                rest.Push(tail);
                End();
            }
            else
            {
                if (page.Count > 0)
                    End();
                Put(block);
            }
        }

        End();
        return pages;

        void Put(Block block)
        {
            page.Add(block);
            used += block.GapMm + block.HeightMm;
        }

        void End()
        {
            pages.Add(Stacked(page));
            page.Clear();
            used = 0;
        }
    }

    /// <summary>Blocks one below the other.</summary>
    /// <param name="blocks">The blocks.</param>
    public static Block Stacked(IEnumerable<Block> blocks)
    {
        var sketch = new Sketch();
        double y = 0;
        var isFirst = true;
        foreach (var block in blocks)
        {
            y += isFirst ? 0 : block.GapMm;
            isFirst = false;
            sketch.Add(block.Items, new(0, y));
            y += block.HeightMm;
        }

        return new(y, sketch.Items);
    }

    /// <summary>Marks a sheet across as not to be made; nothing for one that may be.</summary>
    /// <param name="job">The job.</param>
    /// <param name="width">Width of the sheet [mm].</param>
    /// <param name="height">Height of the sheet [mm].</param>
    public static IEnumerable<SheetItem> Ghosts(DrawingJob job, double width, double height)
    {
        if (!job.CannotBeMade)
            yield break;
        for (var y = Math.Min(GhostPitch, height) * 0.85; y < height; y += GhostPitch)
            yield return new Label(new(width / 2, y), "CANNOT BE MADE", GhostSize * width / Page.Width, Anchor.Middle, IsBold: true, Tone.Ghost, -25);
    }

    /// <summary>The blocks of the sheet.</summary>
    /// <param name="job">The job.</param>
    /// <param name="height">Height that a block may have [mm].</param>
    /// <param name="enlarged">Paper over sheet; null where nobody knows the paper.</param>
    public static IEnumerable<Block> Blocks(DrawingJob job, double height, double? enlarged)
    {
        var head = HeadBlock.Of(job);
        Block[] blanks = [.. FormBlankBlocks.Of(job, height)];
        yield return head;
        yield return SectionBlock.Of(job, enlarged, height - head.HeightMm - blanks[0].HeightMm - (2 * blanks[0].GapMm));
        foreach (var block in blanks)
            yield return block;
        yield return PanelBlankBlock.Of(job);
        foreach (var block in OutlineBlocks.Of(job))
            yield return block;
        foreach (var block in PullBlocks.Of(job))
            yield return block;
        foreach (var block in TextBlocks.Of(job))
            yield return block;
        foreach (var block in LinkBlock.Of(job.Link))
            yield return block;
    }

    /// <summary>A page, or the whole sheet, marked where it is not to be made.</summary>
    /// <param name="job">The job.</param>
    /// <param name="page">The page.</param>
    public static Block Marked(DrawingJob job, Block page) =>
        page with { Items = [.. Ghosts(job, Page.Width, page.HeightMm), .. page.Items] };
}
