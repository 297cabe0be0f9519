using System.Globalization;
using Forming.Drawing.Sheets;
using Forming.Layout;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;
using Forming.Results;

namespace Forming.Drawing.Blocks;

/// <summary>The sheet of a program: head, a small section for every handling, the steps, checks and cautions; or one step of it.</summary>
internal static class ProgramBlocks
{
    /// <summary>Puts the sheet together.</summary>
    /// <param name="job">The program.</param>
    public static IEnumerable<Block> Of(ProgramJob job) => job.Only is { } step ? StepBlocks.Of(job, step) : All(job);

    private static IEnumerable<Block> All(ProgramJob job)
    {
        yield return HeadBlock.Of(
            job.Heading, job.Given, job.Verdict, ("FORM", FormRows(job)), ("PROGRAM", ProgramRows(job)), Conventions(job), job.Fingerprint);
        StripFrame[] frames = [.. job.Pictured().Select((steps, i) => Frame(job, i + 1, steps))];
        var about = "The brake in section at the end of the last swing before the part is moved out or the stop is changed; the operator stands on the right.";
        if (job.Part.Flat is { } flat)
            about += AboutLines(job, flat);
        if (frames.Any(frame => frame.Picture.IsCut.Behind || frame.Picture.IsCut.InFront))
            about += " Long flats are cut short.";
        if (job.Press is not null && job.Part.Flat is null)
            about += " The stop is drawn where the part met it before it swung up.";
        foreach (var block in StripBlocks.Of("Handling", about, frames))
            yield return block;
        yield return Steps(job);
        foreach (var block in OutOfRange(job))
            yield return block;
        foreach (var block in TextBlocks.Of(job.Checks, job.Program.Safety, [], job.Wording))
            yield return block;
        foreach (var block in LinkBlock.Of(job.Link))
            yield return block;
    }

    private static IEnumerable<(string Name, string Value)> FormRows(ProgramJob job)
    {
        var read = job.Readout;
        yield return ("material", job.Sheet.Material.Name);
        yield return ("thickness", $"{HeadBlock.GaugeName(job.GaugeSystem, job.Sheet)}{read.LengthWithUnit(job.Sheet.ThicknessMm)}, fold radius {read.LengthWithUnit(job.Part.Shape.RadiusMm)}");
        yield return ("folds", string.Create(CultureInfo.InvariantCulture, $"{job.Part.Folds}, {(job.Part.Flat is null ? "sweep" : "adding up to")} {Readout.Degrees(new Angle(job.Part.TotalTurn))}"));
        yield return (job.Part.Flat is null ? "width" : "longest fold", read.LaidOutWithUnit(job.Part.WidthMm));
        yield return ("brake", job.Press is { } press ? $"press brake, die opening {read.LengthWithUnit(press.DieOpeningFor(job.Sheet.ThicknessMm))}" : "leaf brake");
    }

    private static IEnumerable<(string Name, string Value)> ProgramRows(ProgramJob job)
    {
        var program = job.Program;
        var load = program.Steps.MaxBy(step => step.Load.ForceN ?? step.Load.HandleForceN)!.Load;
        yield return ("order", program.OrderName!);
        yield return ("turns", string.Create(CultureInfo.InvariantCulture, $"{program.Turns}, handling counts as {program.HandlingCost} slides"));
        var changes = string.Create(CultureInfo.InvariantCulture, $"changed {program.StopChanges} times");
        // A ram stops at any depth: nothing is rounded to a step.
        yield return job.Press is null ? ("stop", $"{changes}, rounding {Readout.SignedDegrees(program.StopRounding)}") : ("ram depth", changes);
        yield return ("clearance", program.Clearance.Nearest is { } nearest
            ? $"{job.Readout.LengthWithUnit(program.Clearance.Mm)} to the {nearest.Word()}"
            : $"at least {job.Readout.LengthWithUnit(program.Clearance.Mm)}");
        yield return load.ForceN is { } force
            ? ("ram force", job.Wording($"{Figure.Force(force)} at most"))
            : ("handle", job.Wording($"{Figure.Force(load.HandleForceN!.Value)}, without the leaf's weight"));
    }

    private static string Conventions(ProgramJob job) =>
        $"Lengths in {(job.Units == LengthUnit.In ? "inches" : "millimetres")}. {(job.Part.Flat is not null ? "Lines set by two marks" : job.Press is null ? "Gauge from the sight line" : "Gauge from the punch tip")}. Marked face up throughout. Start edge: the lead-in.";

    // The form's own sheet shows the marked face, the lead-in on top: the near edge lies on its right.
    private static string AboutLines(ProgramJob job, TaperFlat flat) =>
        " Cut through the middle of the fold, square to it. "
        + $"Mark the {(job.Press is null ? "sight line" : "centre line")} of every fold on the long edges of the sheet, near (right on the form's sheet) and far (left), from the {Corner(flat.Marks.Datum)}, and set the {(job.Press is null ? "nose" : "punch")} on both marks. "
        + "Between two lines swing the part by the angle given: the end named moves towards you.";

    private static string Corner(Datum datum) => datum switch
    {
        Datum.FarEdge => "lead-out corner",
        Datum.Centre => "middle",
        _ => "lead-in corner",
    };

    private static StripFrame Frame(ProgramJob job, int number, IReadOnlyList<ProgramStep> steps)
    {
        var last = steps[^1];
        return new(
            string.Create(CultureInfo.InvariantCulture, $"{number}  {StepWords.Handled(steps[0].Handling)}: {FoldsOf(steps)}, {StepWords.Stop(job, steps[0])}"),
            [
                string.Create(CultureInfo.InvariantCulture, $"Shown: step {last.Number}, fold {last.Fold} {(job.Press is null ? "swung to" : "pressed to")} {Readout.Degrees(last.StopAngle)}; {StepWords.Clearance(job.Readout, last)}."),
                StepWords.Placed(job, last),
            ],
            StepPicture.Of(job, last));
    }

    // "fold 3", "folds 3 to 8", "folds 12 to 6, 1 to 5": in runs of neighbours, up or down.
    private static string FoldsOf(IReadOnlyCollection<ProgramStep> steps)
    {
        List<(int First, int Last, int Way)> runs = [];
        foreach (var fold in steps.Select(step => step.Fold))
        {
            if (runs.Count > 0 && Math.Abs(fold - runs[^1].Last) == 1 && (runs[^1].Way == 0 || fold - runs[^1].Last == runs[^1].Way))
                runs[^1] = (runs[^1].First, fold, fold - runs[^1].Last);
            else
                runs.Add((fold, fold, 0));
        }

        var words = runs.Select(run => run.Way == 0
            ? run.First.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{run.First} to {run.Last}"));
        return (steps.Count == 1 ? "fold " : "folds ") + string.Join(", ", words);
    }

    private static Block Steps(ProgramJob job)
    {
        var unit = job.Readout.LengthName;
        var tape = job.Readout.TapeName;
        PoleColumn[] placing = job.Part.Flat is null
            ? [new("gauged edge", 44, Anchor.Start), new($"gauge, {job.Readout.TapeName}", 86, Anchor.End, IsBold: true)]
            : [new("swing", 44, Anchor.Start), new($"near, {tape}", 71, Anchor.End, IsBold: true), new($"far, {tape}", 88, Anchor.End, IsBold: true)];
        PoleColumn[] columns =
        [
            new("step", 8, Anchor.End, IsBold: true),
            new("fold", 19, Anchor.End, IsBold: true),
            new("handling", 24, Anchor.Start),
            .. placing,
            new("angle", 101),
            .. job.Press is null
                ? (PoleColumn[])[new("stop", 118, Anchor.End, IsBold: true)]
                : [new("under load", 117), new($"ram, {unit}", 132, Anchor.End, IsBold: true)],
            new($"clears, {unit}", Page.Width),
        ];
        var rows = job.Program.Steps.Select(step => Row(job, step)).ToArray();
        var begins = job.Handlings().Select(steps => steps[0].Number - 1).ToHashSet();
        return TableBlocks.Of("Steps", job.Press is null ? "a line is ruled where the part is drawn out" : "a line is ruled where the part is drawn out; ram below where it touches the flat sheet", columns, rows, begins);
    }

    // Every one by its number, so that nobody looks for a gauge setting there is none of.
    private static IEnumerable<Block> OutOfRange(ProgramJob job)
    {
        ProgramStep[] beyond = [.. job.Program.Steps.Where(step => step.Gauge is { Marks: null, IsInRange: false })];
        if (beyond.Length == 0)
            yield break;
        var read = job.Readout;
        var text = $"The gauge reaches from {read.LaidOutWithUnit(job.Brake.GaugeMinMm)} to {read.LaidOutWithUnit(job.Brake.GaugeMaxMm)}: set {FoldsOf(beyond)} by pencil mark, measured from the start edge.";
        var sketch = new Sketch();
        var y = 0.0;
        foreach (var line in Paragraph.Lines(text, Page.Width, Page.Text))
            sketch.Write(0, y += Page.Row, line, Page.Text);
        yield return new(y + 1, sketch.Items, GapMm: 1);
    }

    private static string[] Row(ProgramJob job, ProgramStep step)
    {
        var read = job.Readout;
        return
        [
            step.Number.ToString(CultureInfo.InvariantCulture),
            step.Fold.ToString(CultureInfo.InvariantCulture),
            ProgramWords.OnSheet(step.Handling),
            .. Placed(job, step),
            Readout.Degrees(step.FoldAngle),
            .. step.DepthMm is { } depth
                ? (string[])[Readout.Degrees(step.StopAngle), read.Length(depth)]
                : [Readout.Degrees(step.StopSetting)],
            $"{(step.Clearance.Nearest is null ? "≥ " : "")}{read.Length(step.Clearance.Mm)}",
        ];
    }

    private static string[] Placed(ProgramJob job, ProgramStep step) => step.Gauge.Marks is { } marks
        ? [StepWords.Swing(step), marks.Near.Text, marks.Far.Text]
        : [
            $"{ProgramWords.Of(step.GaugedEdge)}, {(step.Gauge.By == GaugedBy.FoldedPart ? "folded part" : step.Gauge.By == GaugedBy.Mark ? "by mark" : "flat")}",
            step.Gauge.By == GaugedBy.Mark ? $"mark {job.Readout.OnTape(job.MarkMm(step))}" : job.Readout.LaidOut(step.Gauge.DistanceMm),
        ];
}
