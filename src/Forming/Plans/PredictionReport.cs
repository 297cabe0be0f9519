using Forming.Checks;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans.Checks;
using Forming.Plans.Notes;
using Forming.Plans.Remedies;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Plans;

/// <summary>A prediction without a plan, with its checks, cautions and grounds.</summary>
/// <param name="Prediction">The prediction.</param>
/// <param name="Checks">Every check, passed or not.</param>
/// <param name="Safety">Cautions that the pull calls for.</param>
/// <param name="Basis">What every headline value rests on.</param>
public sealed record PredictionReport(
    PanelPrediction Prediction, IReadOnlyList<Check> Checks, IReadOnlyList<SafetyNote> Safety, IReadOnlyList<Basis> Basis)
{
    /// <summary>What to do next.</summary>
    public IReadOnlyList<NextStep> Next => Checks.Where(check => check.Verdict != Verdict.Pass).MaxBy(check => check.Verdict) is { } open
        ? [NextSteps.Change(open, $"Pull nothing yet")]
        : [new(NextStepKind.PullPanel, $"Clamp the panel, and pull its end step by step to the angles in pull.steps.")];

    /// <summary>Over a form that already exists.</summary>
    /// <param name="job">Panel and form.</param>
    /// <param name="form">Family of the form's metal.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static PredictionReport Of(PredictionJob job, MetalFamily form, CancellationToken cancellation = default)
    {
        var prediction = PanelPrediction.Of(job, cancellation);
        var checks = new List<Check>(4);
        PredictionChecks.AddTo(checks, prediction, job.Panel);
        if (prediction.Give is { } give)
            checks.Add(PullChecks.FormYield(give, prediction.ClampGapMm, isEstimated: false));
        return Of(prediction, job.Panel, form, StandingRemedies.Added(job, prediction, checks, cancellation), job.Units, isStanding: true);
    }

    /// <summary>Over a form that is planned first.</summary>
    /// <param name="job">What is asked.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException">What is in the way of a plan.</exception>
    public static PredictionReport Of(FormJob job, CancellationToken cancellation = default)
    {
        var plan = FormPlan.Compute(job with { Panel = job.Panel with { Predict = true } }, IsShown, cancellation);
        var checks = plan.Checks.Where(PredictionChecks.IsOfPrediction).Concat(plan.Checks.Where(check => check.Verdict == Verdict.Fail));
        return Of(plan.Panel.Prediction!, job.Panel, job.Form.Sheet.Material.Family, [.. checks], job.Units, isStanding: false);

        static bool IsShown(Check check) => check.Verdict == Verdict.Fail || PredictionChecks.IsOfPrediction(check);
    }

    private static PredictionReport Of(
        PanelPrediction prediction, PanelSpec panel, MetalFamily form, List<Check> checks, CallerUnits units, bool isStanding)
    {
        if (prediction.Pull is { } pull)
            checks.Insert(
                checks.Count(PredictionChecks.IsOfPrediction),
                HandForceRemedy.Added(PullChecks.HandForce(pull.ForceN, panel.PullBy), panel.PullBy, units));
        return new(prediction, checks, SafetyNotes.OfPull(prediction, panel, form), PredictionBasis.Of(prediction, panel, isStanding));
    }
}
