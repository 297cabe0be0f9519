using Forming.Drawing.Parts;
using Forming.Drawing.Sheets;
using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Forming.Drawing.Pdf;

/// <summary>The sheet as a PDF, and behind it the flat form blank at 1:1.</summary>
public static class PdfSheet
{
    static PdfSheet() => GlobalFontSettings.FontResolver ??= new PdfFonts();

    /// <summary>Writes the pages; a plan that cannot be made is drawn and marked so.</summary>
    /// <param name="job">The job.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="layout">How much of the blank is laid out; null for a story stick, and for the whole of a taper.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <param name="cancellation">Ends the work early: a large blank takes many pages.</param>
    /// <exception cref="Results.NoSolutionException"><c>drawing.no-such-part</c>: a taper has no story stick.</exception>
    public static void Write(DrawingJob job, PaperSize paper, BlankLayout? layout, Stream stream, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        var measures = Paper.Of(paper);
        var blank = FlatParts.OnPages(job, DrawingPart.FormBlank, layout);
        var pages = SheetPages.Of(job, measures).Concat(TiledLayout.Of(job, blank, measures));
        Write(job.Title, job.Fingerprint, pages, measures, stream, cancellation);
    }

    /// <summary>Writes pages.</summary>
    /// <param name="title">Title of the document.</param>
    /// <param name="fingerprint">Fingerprint of request and engine.</param>
    /// <param name="layouts">The pages.</param>
    /// <param name="measures">Measures of a page.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static void Write(
        string title,
        string fingerprint,
        IEnumerable<Pdf.PdfPageLayout> layouts,
        Paper measures,
        Stream stream,
        CancellationToken cancellation)
    {
        using var document = new PdfDocument();
        document.Info.Title = title;
        document.Info.Subject = fingerprint;
        document.Info.Creator = "FormApi";
        // A viewer that fits pages to the paper would spoil what is drawn at 1:1.
        document.ViewerPreferences.Elements.SetName("/PrintScaling", "/None");
        foreach (var layout in layouts)
        {
            cancellation.ThrowIfCancellationRequested();
            var page = document.AddPage();
            page.Width = XUnit.FromMillimeter((layout.Paper ?? measures).Width);
            page.Height = XUnit.FromMillimeter((layout.Paper ?? measures).Height);
            using var graphics = XGraphics.FromPdfPage(page);
            new PdfCanvas(graphics, layout.LineScale).Draw(layout.Items);
        }

        PdfBytes.Write(document, stream);
    }
}

/// <summary>Gives PDFsharp the fonts of this assembly: a server has none of its own.</summary>
internal sealed class PdfFonts : IFontResolver
{
    /// <summary>Name of the only family.</summary>
    public const string Family = "Liberation Sans";

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        familyName == Family ? new(bold ? "bold" : "regular") : null;

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => Typeface.Of(faceName == "bold").Bytes;
}

/// <summary>The sheet of a program as a PDF.</summary>
public static class ProgramPdfSheet
{
    /// <summary>Writes the pages.</summary>
    /// <param name="job">The program.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static void Write(ProgramJob job, PaperSize paper, Stream stream, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        var measures = Paper.Of(paper);
        PdfSheet.Write(job.Heading, job.Fingerprint, SheetPages.Of(job, measures), measures, stream, cancellation);
    }
}
