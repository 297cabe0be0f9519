using System.Globalization;
using Forming.Checks;
using Forming.Drawing.Sheets;
using Forming.Results;

namespace Forming.Drawing.Blocks;

/// <summary>Checks that did not pass, cautions and hints.</summary>
internal static class TextBlocks
{
    private const double TagWidth = 21;

    /// <summary>Writes every text, each in a block of its own so that pages may break between them.</summary>
    /// <param name="job">The job.</param>
    public static IEnumerable<Block> Of(DrawingJob job) =>
        [.. Next(job), .. Of(job.Plan.Checks, job.Plan.Safety, job.Plan.ShopNotes, job.Wording)];

    private static IEnumerable<Block> Next(DrawingJob job)
    {
        yield return Heading("Next");
        for (var i = 0; i < job.Plan.Next.Count; i++)
            yield return Item(string.Create(CultureInfo.InvariantCulture, $"{i + 1}"), "", job.Wording(job.Plan.Next[i].Text), null, 4);
    }

    /// <summary>Writes every text, each in a block of its own so that pages may break between them.</summary>
    /// <param name="checks">Every check, passed or not.</param>
    /// <param name="safety">The cautions.</param>
    /// <param name="notes">The hints.</param>
    /// <param name="wording">Writes a message in the caller's units.</param>
    public static IEnumerable<Block> Of(
        IReadOnlyList<Check> checks,
        IReadOnlyList<SafetyNote> safety,
        IReadOnlyList<ShopNote> notes,
        Func<FormattableString, string> wording)
    {
        var missed = checks.Where(check => check.Verdict != Verdict.Pass).OrderByDescending(check => check.Verdict).ToArray();
        var passed = checks.Count - missed.Length;
        yield return Heading(missed.Length == 0 ? "Checks: all passed" : string.Create(
            CultureInfo.InvariantCulture, $"Checks that did not pass ({passed} of {checks.Count} passed)"));
        foreach (var check in missed)
            yield return Item(check.Verdict == Verdict.Fail ? "FAIL" : "WARN", check.Id, wording(check.Text), Remedy(wording, check));
        yield return Heading("Cautions");
        foreach (var note in safety.OrderByDescending(note => note.Level))
            yield return Item(Word(note.Level), "", wording(note.Text), null);
        if (notes.Count == 0)
            yield break;
        yield return Heading("Shop notes");
        foreach (var note in notes)
            yield return Item("", "", wording(note.Text), null);
    }

    private static string? Remedy(Func<FormattableString, string> wording, Check check) =>
        check.Remedy is { } remedy ? "Remedy: " + wording(remedy.Text) : null;

    private static string Word(SafetyLevel level) => level switch
    {
        SafetyLevel.Danger => "DANGER",
        SafetyLevel.Warning => "WARNING",
        _ => "CAUTION",
    };

    private static Block Heading(string text)
    {
        var sketch = new Sketch();
        sketch.Write(0, Page.Heading, text, Page.Heading, isBold: true);
        sketch.Line(Pen.Leader, new(0, Page.Heading + 1.4), new(Page.Width, Page.Heading + 1.4));
        return new(Page.Heading + 1.6, sketch.Items, StaysWithNext: true);
    }

    private static Block Item(string tag, string id, string text, string? remedy, double tagWidth = TagWidth)
    {
        var sketch = new Sketch();
        var y = Page.Small;
        var indent = tag.Length > 0 ? tagWidth : 3;
        if (tag.Length > 0)
            sketch.Write(0, y, tag, Page.Small + 0.2, isBold: true);
        else
            sketch.Line(Pen.Outline, new(0.5, y - 0.9), new(1.7, y - 0.9));
        y -= Page.SmallLine;
        if (id.Length > 0)
            sketch.Write(indent, y += Page.SmallLine, id, Page.Small, isBold: true);
        foreach (var line in Paragraph.Lines(text, Page.Width - indent, Page.Small))
            sketch.Write(indent, y += Page.SmallLine, line, Page.Small);
        if (remedy is not null)
        {
            foreach (var line in Paragraph.Lines(remedy, Page.Width - indent, Page.Small))
                sketch.Write(indent, y += Page.SmallLine, line, Page.Small);
        }

        return new(y + 0.8, sketch.Items, GapMm: 1.4);
    }
}
