using Forming.Jobs;
using Forming.Prediction;

namespace Forming.Corrections;

/// <summary>Pulls the panel, with the yield that was learnt, over the form with its folds corrected; each correction once.</summary>
/// <param name="pull">Panel and form.</param>
/// <param name="rules">How folds may be corrected.</param>
/// <param name="work">What all pulls together may take.</param>
/// <param name="cancellation">Cancels the calculation.</param>
internal sealed class CorrectionTrial(PredictionJob pull, FoldRules rules, PullWork work, CancellationToken cancellation)
{
    /// <summary>A fold opened further than this is none [rad].</summary>
    public static readonly double LeastFold = Angle.FromDegrees(0.1).Radians;

    private readonly Dictionary<string, Tried?> _tried = [];

    /// <summary>Pulls so far.</summary>
    public int Pulls { get; private set; }

    /// <summary>Whether pulls were wanted that there was no work left for.</summary>
    public bool IsSpent => work.IsSpent;

    /// <summary>Turn of the form as it is [rad].</summary>
    public double FormSweep => pull.Form.FoldAngles.Sum();

    /// <summary>What the panel may miss.</summary>
    public FinishedTolerance Tolerance => pull.Panel.Tolerance;

    /// <summary>Pulls the panel.</summary>
    /// <param name="steps">[m] steps of the stop a fold.</param>
    /// <returns>Null where the panel cannot be followed over that form.</returns>
    public Tried? Of(IReadOnlyList<int> steps)
    {
        var key = string.Join(',', steps);
        if (_tried.TryGetValue(key, out var known))
            return known;
        cancellation.ThrowIfCancellationRequested();
        Tried? tried = null;
        if (!work.IsSpent)
        {
            Pulls++;
            var corrected = pull with { Form = rules.Corrected(pull.Form, steps) };
            var prediction = PanelPrediction.Of(corrected, work, cancellation);
            if (prediction.Shape is { } shape)
                tried = new([.. steps], prediction, PanelOff.Of(shape));
        }

        _tried[key] = tried;
        return tried;
    }
}

/// <summary>A correction that was tried.</summary>
/// <param name="Steps">[m] steps of the stop a fold.</param>
/// <param name="Prediction">The panel off the corrected form.</param>
/// <param name="Off">How far it is off.</param>
internal sealed record Tried(int[] Steps, PanelPrediction Prediction, PanelOff Off)
{
    /// <summary>Folds that are touched.</summary>
    public int Folds => Steps.Count(steps => steps != 0);

    /// <summary>Folds that are opened.</summary>
    public int Opened => Steps.Count(steps => steps < 0);

    /// <summary>Whether sweep and radius are within tolerance.</summary>
    /// <param name="tolerance">The tolerance.</param>
    public bool Meets(FinishedTolerance tolerance) => ShareOf(tolerance) <= 1;

    /// <summary>The larger share of their tolerances that sweep and radius use.</summary>
    /// <param name="tolerance">The tolerance.</param>
    public double ShareOf(FinishedTolerance tolerance)
    {
        var shape = Prediction.Shape!;
        return Math.Max(
            Math.Abs(shape.SweepMiss.Radians) / tolerance.Sweep.Radians, (shape.RadiusMiss ?? 0) / tolerance.RadiusShare);
    }

    /// <summary>The same with the whole curve, for which one is nearest to what is wanted.</summary>
    /// <param name="tolerance">The tolerance.</param>
    public double ShareOfAll(FinishedTolerance tolerance)
    {
        var shape = Prediction.Shape!;
        return Math.Max(ShareOf(tolerance), shape.MissMm / tolerance.ProfileOver(shape.WantedLengthMm));
    }
}
