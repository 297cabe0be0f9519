using Forming.Prediction;
using Forming.Results;

namespace Forming.Corrections;

/// <summary>Whether this very panel can be saved by pulling it once more, over the corrected form.</summary>
/// <param name="Verdict">Whether it can.</param>
/// <param name="Panel">How it comes off then; null where it is not pulled again, or the pull cannot be followed.</param>
/// <param name="Text">What to do with it; its arguments are <see cref="Figure"/>s.</param>
/// <param name="Status">How well that is supported.</param>
public sealed record SecondPull(SecondPullVerdict Verdict, PanelPrediction? Panel, FormattableString Text, Status Status)
{
    /// <summary>Looks at it.</summary>
    /// <param name="pull">Panel and form, with the yield that was learnt.</param>
    /// <param name="corrected">The form corrected.</param>
    /// <param name="asIs">The panel over the form as it stands.</param>
    /// <param name="best">The correction.</param>
    /// <param name="folds">What each fold does alone.</param>
    /// <param name="work">What the pulls may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static SecondPull Of(
        PredictionJob pull,
        StandingForm corrected,
        Tried asIs,
        Tried best,
        FoldResponses? folds,
        PullWork work,
        CancellationToken cancellation)
    {
        var tolerance = pull.Panel.Tolerance;
        if (asIs.Meets(tolerance))
            return new(SecondPullVerdict.NotNeeded, null, $"This panel is within tolerance: it needs no second pull.", Status.Model);
        if (!IsTooOpen(asIs.Off))
            return new(SecondPullVerdict.TooTight, null, $"This panel is too tight. A pull only bends it further, so a second one does not save it.", Status.Model);
        if (best.Opened == best.Folds || folds is null)
            return new(SecondPullVerdict.NotKnown, null, $"No correction closes a fold, so there is no form to pull this panel over again.", Status.Model);
        var again = PanelPrediction.Of(pull with { Form = corrected, PulledBefore = pull.Form }, work, cancellation);
        if (again.Shape is not { } shape)
            return Estimated(asIs, best, folds, pull);
        var tried = new Tried(best.Steps, again, PanelOff.Of(shape));
        if (tried.Meets(tolerance))
            return new(SecondPullVerdict.Saves, again, $"Pull this panel once more over the corrected form: it comes off at {Figure.Angle(shape.Sweep.Radians)}, within tolerance.", Status.Model);
        return tried.ShareOf(tolerance) < asIs.ShareOf(tolerance)
            ? new(SecondPullVerdict.Helps, again, $"A second pull over the corrected form brings this panel nearer, to {Figure.Angle(shape.Sweep.Radians)}, but not within tolerance: what is set already spreads the new bend, so more of it springs back.", Status.Model)
            : new(SecondPullVerdict.DoesNotHelp, again, $"A second pull over the corrected form does not bring this panel nearer.", Status.Model);
    }

    private static bool IsTooOpen(PanelOff off) => off.Sweep < 0 || (off.Sweep == 0 && off.LnRadius > 0);

    // By the bending law alone a place that was bent before goes on along the same curve: the panel then comes off like a new one.
    private static SecondPull Estimated(Tried asIs, Tried best, FoldResponses folds, PredictionJob pull)
    {
        var most = folds.Sum([.. best.Steps.Select(steps => Math.Max(0, steps))]);
        var sweep = pull.Panel.Tolerance.Sweep.Radians;
        FormattableString end = $"by the bending law alone a second pull brings it at most {Figure.Angle(most.Sweep - asIs.Off.Sweep)} further";
        return Math.Abs(most.Sweep) <= sweep
            ? new(SecondPullVerdict.Helps, null, $"The second pull of this panel cannot be followed in simulation; {end}. Try it: nothing is lost.", Status.Estimated)
            : new(SecondPullVerdict.DoesNotHelp, null, $"The second pull of this panel cannot be followed in simulation; {end}, which is not enough.", Status.Estimated);
    }
}

/// <summary>Whether a panel can be saved.</summary>
public enum SecondPullVerdict
{
    /// <summary>It is good as it is.</summary>
    NotNeeded,

    /// <summary>It comes off within tolerance.</summary>
    Saves,

    /// <summary>It comes nearer, and not within tolerance.</summary>
    Helps,

    /// <summary>It comes no nearer.</summary>
    DoesNotHelp,

    /// <summary>It is bent too far already.</summary>
    TooTight,

    /// <summary>There is nothing to pull it over.</summary>
    NotKnown,
}
