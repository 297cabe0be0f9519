using Forming.Layout;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;
using Forming.Results;

namespace Forming.Programs;

/// <summary>What to do at a step, in words.</summary>
internal static class StepText
{
    /// <summary>A swing below this nobody sees: its first digit shown is 0 [°].</summary>
    private const double LeastSwingDegrees = 0.05;

    /// <summary>The text of a step.</summary>
    /// <param name="part">The part.</param>
    /// <param name="trial">The fold.</param>
    /// <param name="handling">How the part is moved to it.</param>
    /// <param name="swing">How far a taper is swung on the way, or null.</param>
    /// <param name="newSetting">What the stop is set to, or null where it stays as it is.</param>
    /// <param name="depth">How far the ram comes down [mm], or null on a leaf brake.</param>
    public static FormattableString Of(
        ProgramPart part, FoldTrial trial, Handling handling, Angle? swing, Angle? newSetting, double? depth)
    {
        var edge = trial.EdgeInFront == PartEdge.Start ? "start edge" : "end edge";
        FormattableString handled = handling switch
        {
            Handling.Load => $"Lay the blank in, {edge} towards you, marked face up",
            Handling.Push when swing is { } level && Math.Abs(level.Degrees) >= LeastSwingDegrees => $"Slide the part on to fold {trial.Fold + 1} and swing its {ProgramStep.EndTowards(level, trial.EdgeInFront).Word()} end {Figure.Angle(Math.Abs(level.Radians)):0.0} towards you",
            Handling.Push => $"Slide the part on to fold {trial.Fold + 1}",
            Handling.ReEnter => $"Draw the part out and put it in again, {edge} towards you",
            _ => $"Draw the part out, turn it end for end, {edge} towards you",
        };
        var gauge = trial.Gauge;
        FormattableString placed = gauge switch
        {
            { Marks: { } marks } => $"its line under the {(trial.IsPressed ? "punch" : "nose")} at both marks: {marks.Near.Text} {Unit(part)} on the near edge, {marks.Far.Text} {Unit(part)} on the far edge, {From(part.Flat!.Marks.Datum)}",
            { By: GaugedBy.Flat } => $"against the stop at {Figure.Length(gauge.DistanceMm):/64}",
            { By: GaugedBy.FoldedPart } => $"folded part against the stop at {Figure.Length(gauge.DistanceMm):/64}, and look at the mark",
            _ => $"by its pencil mark: the gauge does not reach",
        };
        // A press stops by the ram's depth; the angle under load is what that gives.
        if (depth is { } down)
        {
            return newSetting is null
                ? $"{handled}, {placed}. Fold to the same depth."
                : (FormattableString)$"{handled}, {placed}. Set the ram {Figure.Length(down)} below where it touches the flat sheet ({Figure.Angle(part.StopAngles[trial.Fold]):0.0} under load) and fold.";
        }

        return newSetting is { } setting
            ? $"{handled}, {placed}. Set the stop to {Figure.Angle(setting.Radians):0.###} ({Figure.Angle(part.StopAngles[trial.Fold]):0.0} wanted) and fold."
            : (FormattableString)$"{handled}, {placed}. Fold to the same stop.";
    }

    private static string Unit(ProgramPart part) => part.Flat!.Marks.Tape.Unit == LengthUnit.In ? "in" : "mm";

    private static string From(Datum datum) => datum switch
    {
        Datum.FarEdge => "from the lead-out corner",
        Datum.Centre => "from the middle",
        _ => "from the lead-in corner",
    };
}
