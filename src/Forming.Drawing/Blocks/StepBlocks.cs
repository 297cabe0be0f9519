using System.Globalization;
using Forming.Checks;
using Forming.Drawing.Sheets;
using Forming.Programs;

namespace Forming.Drawing.Blocks;

/// <summary>One step of a program, to be read at the brake from two paces.</summary>
internal static class StepBlocks
{
    private const double TitleSize = 7;
    private const double FigureSize = 9;
    private const double PictureHeight = 90;

    /// <summary>Puts the step together.</summary>
    /// <param name="job">The program.</param>
    /// <param name="step">The step.</param>
    public static IEnumerable<Block> Of(ProgramJob job, ProgramStep step)
    {
        yield return Figures(job, step);
        yield return Picture(job, step);
        Check[] open = [.. step.Checks.Where(check => check.Verdict != Verdict.Pass)];
        foreach (var block in TextBlocks.Of(open, job.Program.Safety, [], job.Wording))
            yield return block;
    }

    private static Block Figures(ProgramJob job, ProgramStep step)
    {
        var sketch = new Sketch();
        var y = TitleSize;
        var title = string.Create(CultureInfo.InvariantCulture, $"Step {step.Number} of {job.Program.Steps.Count}: fold {step.Fold}");
        sketch.Write(0, y, title, TitleSize, isBold: true);
        if (job.Given is not null)
        {
            var about = string.Join(", ", job.Given.Fields().Select(field => $"{field.Name} {field.Value}").Prepend(job.Heading));
            foreach (var line in Paragraph.Lines(about, Page.Width, Page.Text))
                sketch.Write(0, y += Page.Row, line, Page.Text);
        }

        string[] rows =
        [
            Place(job, step),
            $"{StepWords.Stop(job, step)}{(step.IsStopChanged ? ", changed here" : "")}",
            .. step.DepthMm is null ? (string[])[] : [$"{Readout.Degrees(step.StopAngle)} under load"],
        ];
        foreach (var row in rows)
            sketch.Write(0, y += FigureSize * 1.3, Paragraph.OneLine(row, Page.Width, FigureSize), FigureSize, isBold: true);
        y += 2;
        foreach (var line in Words(job, step).SelectMany(text => Paragraph.Lines(text, Page.Width, Page.Text)))
            sketch.Write(0, y += Page.Row, line, Page.Text);
        return new(y + 1, sketch.Items, GapMm: 0);
    }

    private static string Place(ProgramJob job, ProgramStep step) => step.Gauge switch
    {
        { Marks: { } marks } => $"near {marks.Near.Text}, far {marks.Far.Text}",
        { By: GaugedBy.Mark } => $"mark of fold {step.Fold.ToString(CultureInfo.InvariantCulture)}: {StepWords.Mark(job, step)}",
        _ => $"gauge {job.Readout.LaidOutWithUnit(step.Gauge.DistanceMm)}",
    };

    private static IEnumerable<string> Words(ProgramJob job, ProgramStep step)
    {
        var swing = StepWords.Swing(step);
        var handled = StepWords.Handled(step.Handling);
        yield return char.ToUpperInvariant(handled[0]) + handled[1..] + ". " + StepWords.Placed(job, step);
        if (swing.Length > 0)
            yield return $"Swing the part first: {swing} towards you.";
        yield return $"The fold is {Readout.Degrees(step.FoldAngle)} once it has sprung back; {StepWords.Clearance(job.Readout, step)}.";
    }

    private static Block Picture(ProgramJob job, ProgramStep step)
    {
        var sketch = new Sketch();
        var picture = StepPicture.Of(job, step);
        picture.Draw(sketch, new(0, 0), Page.Width, PictureHeight);
        var cut = picture.IsCut is (false, false) ? "" : " Long flats are cut short.";
        sketch.Write(0, PictureHeight + Page.SmallLine, "In section at the end of the swing; the operator stands on the right." + cut, Page.Small);
        sketch.Add([new View("step", new(-1, -1), new(Page.Width + 1, PictureHeight + 1))], default);
        return new(PictureHeight + Page.SmallLine + 1, sketch.Items);
    }
}
