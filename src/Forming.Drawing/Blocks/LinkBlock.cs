using Forming.Drawing.Sheets;
using QRCoder;

namespace Forming.Drawing.Blocks;

/// <summary>The link to this sheet as a QR code (ISO/IEC 18004), for whoever holds the paper.</summary>
internal static class LinkBlock
{
    // Half a millimetre is read from paper at arm's length; the sheet is rather enlarged than shrunk on its way to paper.
    private const double TileMm = 0.5;

    private const double GapMm = 5;

    private const string About =
        "Opens this sheet again, recalculated by the service: compare the fingerprint before folding. The link holds the whole job, so anyone who has it can read the job.";

    /// <summary>Draws the code; nothing where there is no link.</summary>
    /// <param name="link">The address, or null.</param>
    public static IEnumerable<Block> Of(string? link)
    {
        if (link is null)
            yield break;
        var tiles = SymbolOf(link);
        var side = tiles.Count * TileMm;
        var sketch = new Sketch();
        sketch.Add([tiles], default);
        var y = Page.Text * 2;
        sketch.Write(side + GapMm, y, "LINK", Page.Text, isBold: true);
        foreach (var line in Paragraph.Lines(About, Page.Width - side - GapMm, Page.Small))
        {
            y += Page.SmallLine;
            sketch.Write(side + GapMm, y, line, Page.Small);
        }

        yield return new(side, sketch.Items);
    }

    /// <summary>The symbol of an address.</summary>
    /// <param name="link">The address.</param>
    public static Tiles SymbolOf(string link)
    {
        using var data = QRCodeGenerator.GenerateQrCode(link, QRCodeGenerator.ECCLevel.L);
        // The four light modules all round that the standard asks for are part of the grid.
        return new(default, TileMm, data.ModuleMatrix.Count, [.. RunsOf(data)]);
    }

    private static IEnumerable<TileRun> RunsOf(QRCodeData data)
    {
        for (var row = 0; row < data.ModuleMatrix.Count; row++)
        {
            var modules = data.ModuleMatrix[row];
            for (var column = 0; column < modules.Count; column++)
            {
                var from = column;
                while (column < modules.Count && modules[column])
                    column++;
                if (column > from)
                    yield return new(row, from, column - from);
            }
        }
    }
}
