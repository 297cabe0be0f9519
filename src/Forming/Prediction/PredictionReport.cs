using Forming.Materials;
using Forming.Plans;
using Forming.Plans.Checks;
using Forming.Plans.Notes;
using Forming.Results;

namespace Forming.Prediction;

/// <summary>A prediction that stands alone, with its checks, cautions and grounds.</summary>
/// <param name="Prediction">The prediction.</param>
/// <param name="Checks">Every check, passed or not.</param>
/// <param name="Safety">Cautions that the pull calls for.</param>
/// <param name="Basis">What every headline figure rests on.</param>
public sealed record PredictionReport(
    PanelPrediction Prediction, IReadOnlyList<Check> Checks, IReadOnlyList<SafetyNote> Safety, IReadOnlyList<Basis> Basis)
{
    /// <summary>Over a form that already stands.</summary>
    /// <param name="job">Panel and form.</param>
    /// <param name="form">Family of the form's metal.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="NoSolutionException"><c>prediction.taper</c>.</exception>
    public static PredictionReport Of(PredictionJob job, MetalFamily form, CancellationToken cancellation = default) =>
        Of(PanelPrediction.Of(job, cancellation), job.Panel, form, []);

    /// <summary>Over a form that is planned first.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="form">The form.</param>
    /// <param name="brake">The brake.</param>
    /// <param name="marks">How the flat is marked.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="NoSolutionException"><c>prediction.taper</c>, or what stands in the way of a plan.</exception>
    public static PredictionReport Of(
        PanelSpec panel, FormSpec form, BrakeSpec brake, MarkSpec marks, CancellationToken cancellation = default)
    {
        PanelPrediction.RefuseTaper(panel);
        var plan = FormPlan.Compute(panel with { Predict = true }, form, brake, marks, cancellation);
        return Of(
            plan.Panel.Prediction!,
            panel,
            form.Sheet.Material.Family,
            plan.Checks.Where(check => check.Verdict == Verdict.Fail),
            isStanding: false);
    }

    private static PredictionReport Of(
        PanelPrediction prediction, PanelSpec panel, MetalFamily form, IEnumerable<Check> failed, bool isStanding = true)
    {
        var checks = new List<Check>(4);
        PredictionChecks.AddTo(checks, prediction, panel);
        if (prediction.Pull is { } pull)
            checks.Add(PullChecks.HandForce(pull.ForceN));
        checks.AddRange(failed);
        return new(prediction, checks, SafetyNotes.OfPull(prediction, panel, form), PredictionBasis.Of(prediction, panel, isStanding));
    }
}
