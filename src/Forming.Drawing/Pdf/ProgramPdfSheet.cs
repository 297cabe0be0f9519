namespace Forming.Drawing.Pdf;

/// <summary>The sheet of a program as a PDF.</summary>
public static class ProgramPdfSheet
{
    /// <summary>Writes the pages.</summary>
    /// <param name="job">The program.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <param name="cancellation">Ends the work early.</param>
    public static void Write(ProgramJob job, PaperSize paper, Stream stream, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        var measures = Paper.Of(paper);
        PdfSheet.Write(job.Title, job.Fingerprint, SheetPages.Of(job, measures), measures, stream, cancellation);
    }
}
