using System.Globalization;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace Forming.Drawing.Blocks;

/// <summary>What is said of one step beside its picture.</summary>
internal static class StepWords
{
    /// <summary>How the part comes to the fold.</summary>
    /// <param name="handling">The handling.</param>
    public static string Handled(Handling handling) => handling switch
    {
        Handling.Turn => "turn end for end",
        Handling.ReEnter => "draw out and put in again",
        Handling.Push => "slide to the next fold",
        _ => "lay the blank in",
    };

    /// <summary>What places the part.</summary>
    /// <param name="job">The program.</param>
    /// <param name="step">The step.</param>
    public static string Placed(ProgramJob job, ProgramStep step)
    {
        var read = job.Readout;
        var placed = step.Gauge switch
        {
            { Marks: { } marks } => $"near mark {marks.Near.Text}, far mark {marks.Far.Text}; {ProgramWords.Of(step.GaugedEdge)} edge behind",
            { By: GaugedBy.Flat } => $"{ProgramWords.Of(step.GaugedEdge)} edge flat against the stop at {read.LaidOutWithUnit(step.Gauge.DistanceMm)}",
            { By: GaugedBy.FoldedPart } => $"folded {ProgramWords.Of(step.GaugedEdge)} edge side against the stop at {read.LaidOutWithUnit(step.Gauge.DistanceMm)}; mark at {Mark(job, step)} from the start edge",
            _ => $"by its pencil mark, {Mark(job, step)} from the start edge; {ProgramWords.Of(step.GaugedEdge)} edge behind, out of the gauge's range",
        };
        return $"{(step.Gauge.By == GaugedBy.Mark ? "Set" : "Gauged")}: {placed}.";
    }

    /// <summary>The pencil mark of a fold that no gauge reaches, with its unit.</summary>
    /// <param name="job">The program.</param>
    /// <param name="step">The step.</param>
    public static string Mark(ProgramJob job, ProgramStep step) => $"{job.Readout.OnTape(job.MarkMm(step))} {job.Readout.TapeName}";

    /// <summary>Where the fold stops: the ram's depth of a press, the stop's setting of a leaf.</summary>
    /// <param name="job">The program.</param>
    /// <param name="step">The step.</param>
    public static string Stop(ProgramJob job, ProgramStep step) => step.DepthMm is { } depth
        ? $"ram {job.Readout.LengthWithUnit(depth)} down"
        : $"stop {Readout.Degrees(step.StopSetting)}";

    /// <summary>How near the part comes to a tool.</summary>
    /// <param name="read">How figures read.</param>
    /// <param name="step">The step.</param>
    public static string Clearance(Readout read, ProgramStep step) => step.Clearance.Nearest is { } nearest
        ? $"clears the {nearest.Word()} by {read.LengthWithUnit(step.Clearance.Mm)}{At(step.Section)}"
        : $"clears all tools by at least {read.LengthWithUnit(step.Clearance.Mm)}";

    /// <summary>How far the part is swung before the fold, and which end towards the operator; empty where it is not.</summary>
    /// <param name="step">The step.</param>
    public static string Swing(ProgramStep step) => step.Swing is { } swing
        ? string.Create(CultureInfo.InvariantCulture, $"{step.EndTowardsOperator?.Word()} {Math.Abs(swing.Degrees):0.0}°")
        : "";

    private static string At(FoldPlace? place) => place switch
    {
        FoldPlace.Near => " at its near end",
        FoldPlace.Far => " at its far end",
        FoldPlace.Middle => " in its middle",
        _ => "",
    };
}
