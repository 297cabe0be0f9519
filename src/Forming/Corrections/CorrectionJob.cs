using Forming.Inspection;
using Forming.Materials;
using Forming.Prediction;

namespace Forming.Corrections;

/// <summary>A panel that came off a form, what was measured on it, and how the form's folds may be corrected.</summary>
public sealed record CorrectionJob
{
    /// <summary>Panel and form, straight; what is wanted and how it was pulled.</summary>
    public required PredictionJob Pull { get; init; }

    /// <summary>What was measured on the panel.</summary>
    public required MeasuredPanel Measured { get; init; }

    /// <summary>How well the form's folds are known, one standard deviation each.</summary>
    public required Angle FoldError { get; init; }

    /// <summary>Whether the folds are those of the form as it was measured, and not those of its plan.</summary>
    public required bool IsFormMeasured { get; init; }

    /// <summary>How folds may be corrected.</summary>
    public required FoldRules Rules { get; init; }

    /// <summary>Family of the form's metal.</summary>
    public required MetalFamily FormMetal { get; init; }
}

/// <summary>How folds of a form that stands may be corrected.</summary>
/// <param name="Step">Step of the stop, &gt; 0.</param>
/// <param name="Direction">Which way.</param>
/// <param name="MostSteps">Most steps at one fold to either side, at least 1.</param>
public sealed record FoldRules(Angle Step, CorrectionDirection Direction, int MostSteps)
{
    /// <summary>Fewest steps at one fold; below 0 opens it.</summary>
    public int LeastSteps => Direction == CorrectionDirection.CloseOnly ? 0 : -MostSteps;

    /// <summary>A form with its folds corrected, fold places kept.</summary>
    /// <param name="form">The form.</param>
    /// <param name="steps">[m] steps of the stop a fold.</param>
    public StandingForm Corrected(StandingForm form, IReadOnlyList<int> steps) =>
        form with { FoldAngles = [.. form.FoldAngles.Select((angle, i) => angle + (steps[i] * Step.Radians))] };
}
