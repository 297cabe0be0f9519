using System.Globalization;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>A table of values, parted where a page ends, each part with its headings.</summary>
internal static class TableBlocks
{
    private const double HeadHeight = 12.5;

    /// <summary>Fewer rows are not left alone on either page.</summary>
    private const int LeastRows = 4;

    /// <summary>Draws the table.</summary>
    /// <param name="heading">Heading of the table.</param>
    /// <param name="about">How it is to be read.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="rows">Values, column by column; the first names the row.</param>
    /// <param name="rules">Rows above which a line is ruled.</param>
    public static Block Of(
        string heading,
        string about,
        IReadOnlyList<PoleColumn> columns,
        IReadOnlyList<IReadOnlyList<string>> rows,
        IReadOnlySet<int> rules)
    {
        return Part(0, rows.Count);

        Block Part(int first, int end)
        {
            var sketch = new Sketch();
            sketch.Write(0, Page.Heading, heading, Page.Heading, isBold: true);
            var isWhole = first == 0 && end == rows.Count;
            var words = isWhole ? about : string.Create(CultureInfo.InvariantCulture, $"{first + 1} to {end} of {rows.Count}; {about}");
            sketch.Write(38, Page.Heading, Paragraph.OneLine(words, Page.Width - 38, Page.Small), Page.Small);
            var y = Page.Heading + 5.5 + PoleColumn.GroupsHeight(columns);
            PoleColumn.WriteHeadings(sketch, columns, y);
            y += 1.2;
            sketch.Line(Pen.Leader, new(0, y), new(Page.Width, y));
            for (var row = first; row < end; row++)
            {
                if (row > first && rules.Contains(row))
                    sketch.Line(Pen.Leader, new(0, y + 0.9), new(Page.Width, y + 0.9));
                y += Page.Row;
                for (var i = 0; i < columns.Count; i++)
                    sketch.Write(new Label(new(columns[i].AtMm, y), rows[row][i], columns[i].SizeMm, columns[i].Anchor, columns[i].IsBold));
            }

            return new(y + 1.5, sketch.Items, Split: height => SplitAt(first, end, height));
        }

        (Block Head, Block Tail)? SplitAt(int first, int end, double height)
        {
            var fitting = (int)Math.Floor((height - HeadHeight - PoleColumn.GroupsHeight(columns)) / Page.Row);
            var cut = first + Math.Min(fitting, end - first - LeastRows);
            return cut - first < LeastRows ? null : (Part(first, cut), Part(cut, end));
        }
    }
}
