using Forming.Checks;

namespace Forming.Plans.Notes;

/// <summary>What to do next with a plan, in shop words.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">What to do; arguments are <see cref="Results.Figure"/>s.</param>
/// <param name="Strips">Strips to cut and bend for it, or null.</param>
/// <param name="Remedy">Changes to the job that it asks for, or null.</param>
public sealed record NextStep(
    NextStepKind Kind, FormattableString Text, FirstStrips? Strips = null, Remedy? Remedy = null);

/// <summary>Kinds of steps.</summary>
public enum NextStepKind
{
    /// <summary>The job has to change before anything is cut.</summary>
    ChangeJob,

    /// <summary>Strips of the panel's sheet are bent round a bar, to learn its yield.</summary>
    BendStrip,

    /// <summary>Strips of the form's sheet are folded, to learn the stop.</summary>
    FoldStrips,

    /// <summary>What strips taught goes into the form's request.</summary>
    PlanForm,

    /// <summary>Ribs are cut for the form.</summary>
    MakeRibs,

    /// <summary>The sheet is printed, the blanks marked and cut.</summary>
    PrintSheet,

    /// <summary>The form is folded by the program.</summary>
    RunProgram,

    /// <summary>The form is measured before it is used.</summary>
    InspectForm,

    /// <summary>Some folds of the form are corrected.</summary>
    CorrectFolds,

    /// <summary>The panel is clamped and pulled.</summary>
    PullPanel,

    /// <summary>The panel that came off is measured.</summary>
    MeasurePanel,
}

/// <summary>Strips to cut and bend first.</summary>
/// <param name="Count">How many.</param>
/// <param name="LengthMm">Length of one, across the bend [mm].</param>
/// <param name="WidthMm">Width of one, along the bend [mm].</param>
/// <param name="ThicknessMm">Thickness of the sheet they are cut from [mm].</param>
/// <param name="StopSetting">What to set the stop to, or null where none is folded.</param>
/// <param name="RoundRadiusMm">Radius of the bar they are bent round [mm], or null where they are folded.</param>
public sealed record FirstStrips(
    int Count, double LengthMm, double WidthMm, double ThicknessMm, Angle? StopSetting, double? RoundRadiusMm);
