using System.Globalization;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>A table of values, in as many parts as the height of a page asks for, each with its headings.</summary>
internal static class TableBlocks
{
    private const double HeadHeight = 16;

    /// <summary>Draws the table.</summary>
    /// <param name="heading">Heading of the table.</param>
    /// <param name="about">How it is to be read.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="rows">Values, column by column; the first names the row.</param>
    /// <param name="rules">Rows above which a line is ruled.</param>
    /// <param name="mostHeight">Height that a part may have [mm].</param>
    public static IEnumerable<Block> Of(
        string heading,
        string about,
        IReadOnlyList<PoleColumn> columns,
        IReadOnlyList<IReadOnlyList<string>> rows,
        IReadOnlySet<int> rules,
        double mostHeight)
    {
        var groups = PoleColumn.GroupsHeight(columns);
        var rowsInAPart = (int)Math.Clamp((mostHeight - HeadHeight - groups) / Page.Row, 4, Math.Max(4, rows.Count));
        var parts = (rows.Count + rowsInAPart - 1) / rowsInAPart;
        for (var part = 0; part < parts; part++)
        {
            int first = part * rows.Count / parts, end = (part + 1) * rows.Count / parts;
            var sketch = new Sketch();
            sketch.Write(0, Page.Heading, heading, Page.Heading, isBold: true);
            var words = parts == 1 ? about : string.Create(CultureInfo.InvariantCulture, $"{first + 1} to {end} of {rows.Count}; {about}");
            sketch.Write(38, Page.Heading, Paragraph.OneLine(words, Page.Width - 38, Page.Small), Page.Small);
            var y = Page.Heading + 5.5 + groups;
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

            yield return new(y + 1.5, sketch.Items);
        }
    }
}
