using Forming.Drawing.Blocks;
using Forming.Drawing.Parts;
using Forming.Results;

namespace Forming.Drawing.Pdf;

/// <summary>One part at 1:1 as a PDF.</summary>
public static class PdfPart
{
    /// <summary>Writes the pages; a plan that cannot be made is drawn and marked so.</summary>
    /// <param name="job">The job.</param>
    /// <param name="part">The part.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="layout">How much of a blank is laid out; null for a story stick, and for the whole of a taper.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <param name="cancellation">Ends the work early: a large part takes many pages.</param>
    /// <exception cref="NoSolutionException"><c>drawing.no-such-part</c>: this job has no such part.</exception>
    public static void Write(
        DrawingJob job, DrawingPart part, PaperSize paper, BlankLayout? layout, Stream stream, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        var measures = Paper.Of(paper);
        if (Card.Of(job, part) is { } card)
        {
            PdfSheet.Write(
                $"{card.Name}: {job.Title}", job.Fingerprint, SheetPages.Of(job, card, measures), measures, stream, cancellation);
            return;
        }

        var shown = FlatParts.OnPages(job, part, layout);
        PdfSheet.Write(
            $"{shown.Name}: {job.Title}", job.Fingerprint, TiledLayout.Of(job, shown, measures), measures, stream, cancellation);
    }
}
