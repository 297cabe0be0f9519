using Forming.Drawing.Pdf;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Forming.Drawing;

/// <summary>The sheet as a PDF, and behind it the flat form blank at 1:1.</summary>
public static class PdfSheet
{
    static PdfSheet() => GlobalFontSettings.FontResolver ??= new PdfFonts();

    /// <summary>Writes the pages; a plan that cannot be made is drawn and marked so.</summary>
    /// <param name="job">The job.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="stream">Where to write; stays open.</param>
    public static void Write(DrawingJob job, PaperSize paper, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        using var document = new PdfDocument();
        document.Info.Title = job.Title;
        document.Info.Subject = job.Fingerprint;
        document.Info.Creator = "FormApi";
        var measures = Paper.Of(paper);
        foreach (var layout in SheetPages.Of(job, measures).Concat(TiledLayout.Of(job, measures)))
        {
            var page = document.AddPage();
            page.Width = XUnit.FromMillimeter(measures.Width);
            page.Height = XUnit.FromMillimeter(measures.Height);
            using var graphics = XGraphics.FromPdfPage(page);
            new PdfCanvas(graphics, layout.LineScale).Draw(layout.Items);
        }

        PdfBytes.Write(document, stream);
    }
}
