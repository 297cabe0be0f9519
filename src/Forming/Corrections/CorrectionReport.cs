using Forming.Checks;
using Forming.Plans.Checks;
using Forming.Plans.Notes;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Corrections;

/// <summary>A panel that came off a form: what explains it, what to do to the form, and what comes off then.</summary>
public sealed record CorrectionReport
{
    /// <summary>The panel as it was planned, or as the request's sheet says.</summary>
    public required PanelPrediction Planned { get; init; }

    /// <summary>What explains the panel.</summary>
    public required LearntYield Yield { get; init; }

    /// <summary>The panel off the form as it stands, with the learnt yield.</summary>
    public required PanelPrediction AsIs { get; init; }

    /// <summary>What to do to the form that stands there.</summary>
    public required FormCorrection Form { get; init; }

    /// <summary>The next panel off the corrected form, with the learnt yield.</summary>
    public required PanelPrediction After { get; init; }

    /// <summary>Whether this panel can be saved.</summary>
    public required SecondPull Second { get; init; }

    /// <summary>The panel after the correction against its tolerances.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>What to do next.</summary>
    public IReadOnlyList<NextStep> Next => CorrectionWords.NextOf(this);

    /// <summary>What to know about the results.</summary>
    public IReadOnlyList<ShopNote> Notes => CorrectionWords.NotesOf(this);

    /// <summary>Cautions.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>What the results rest on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }

    /// <summary>Pulls that were simulated to find the correction.</summary>
    public required int Pulls { get; init; }

    /// <summary>Works it out.</summary>
    /// <param name="job">Panel, form, readings and rules.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>corrections.…</c>: the pull cannot be followed, or the template turns the other way.
    /// </exception>
    public static CorrectionReport Of(CorrectionJob job, CancellationToken cancellation = default)
    {
        if (job.Measured.Points is { } points)
            TemplateFit.RefuseMirrored(points);
        var work = new PullWork(PullWork.Most);
        var planned = PanelPrediction.Of(job.Pull, work, cancellation);
        if (planned.Shape is null)
        {
            throw new NoSolutionException(
                "corrections.not-followed", "panel", planned.WhyNot!, $"a job whose pull /v1/forms/prediction can follow");
        }

        // From here on the hand stays where it was.
        var pull = job.Pull with
        {
            LeverMm = planned.LeverMm!.Value,
            Panel = job.Pull.Panel with { LeverMm = planned.LeverMm },
        };
        var yield = PanelLearning.Of(job, pull, planned, work, cancellation);
        var learnt = pull with { Panel = PanelLearning.Stronger(pull.Panel, yield.Factor) };
        // Where following this pull takes that long, folds are not tried one by one.
        var trial = new CorrectionTrial(learnt, job.Rules, new(PullWork.Most), cancellation);
        var form = learnt.Form;
        if (trial.Of(new int[form.Folds]) is not { } asIs)
        {
            throw new NoSolutionException(
                "corrections.not-followed", "measured", $"the pull of a panel of the yield that the readings ask for, {Figure.Stress(yield.EffectiveMpa.Value)}, cannot be followed over this form", $"readings of a panel off this form");
        }

        var (correction, best, folds) = Correct(trial, asIs, form, job.Rules);
        return new()
        {
            Planned = planned,
            Yield = yield,
            AsIs = asIs.Prediction,
            Form = correction,
            After = best.Prediction,
            Second = SecondPull.Of(learnt, form with { FoldAngles = correction.Angles }, asIs, best, folds, work, cancellation),
            Checks = [.. OutcomeChecks.Of(best.Prediction.Shape!, learnt.Panel.Tolerance)],
            Safety = CorrectionWords.SafetyOf(best, learnt.Panel, job.FormMetal),
            Basis = CorrectionWords.BasisOf(job, learnt.Panel),
            Pulls = trial.Pulls,
        };
    }

    private static (FormCorrection Form, Tried Best, FoldResponses? Folds) Correct(
        CorrectionTrial trial, Tried asIs, StandingForm form, FoldRules rules)
    {
        FoldResponses? folds = null;
        FewestResult fewest = new(asIs, 0, true);
        var best = asIs;
        if (!asIs.Meets(trial.Tolerance))
        {
            folds = FoldResponses.Of(trial, asIs.Off, form, rules);
            fewest = FewestFolds.Find(folds, trial, asIs);
            best = fewest.Found ?? SpreadFolds.Find(folds, trial, asIs);
        }

        return (
            new()
            {
                Meets = best.Meets(trial.Tolerance),
                Steps = best.Steps,
                Angles = rules.Corrected(form, best.Steps).FoldAngles,
                LowerBound = fewest.LowerBound,
                IsFewest = fewest is { Found: not null, IsProven: true },
                HitLimit = trial.IsSpent,
            },
            best,
            folds);
    }
}

/// <summary>What to do to a form that stands, its fold places kept.</summary>
public sealed record FormCorrection
{
    /// <summary>Whether the panel is within its tolerance of sweep and radius afterwards.</summary>
    public required bool Meets { get; init; }

    /// <summary>[m] steps of the stop a fold; negative opens it.</summary>
    public required IReadOnlyList<int> Steps { get; init; }

    /// <summary>[m] fold angles afterwards [rad].</summary>
    public required IReadOnlyList<double> Angles { get; init; }

    /// <summary>With fewer corrected folds than this it cannot be done.</summary>
    public required int LowerBound { get; init; }

    /// <summary>Whether no fewer folds would do.</summary>
    public required bool IsFewest { get; init; }

    /// <summary>Whether the search ended because its work was used up.</summary>
    public required bool HitLimit { get; init; }

    /// <summary>Folds that are touched.</summary>
    public int Folds => Steps.Count(steps => steps != 0);

    /// <summary>Folds that are closed.</summary>
    public int Closed => Steps.Count(steps => steps > 0);

    /// <summary>Folds that are opened.</summary>
    public int Opened => Steps.Count(steps => steps < 0);
}
