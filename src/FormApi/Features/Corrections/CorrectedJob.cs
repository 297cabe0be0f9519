using FormApi.Features.Forms;
using FormApi.Features.Predictions;
using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;
using Forming.Checks;
using Forming.Corrections;
using Forming.Outlook;
using Forming.Plans;
using Forming.Prediction;
using Forming.Results;

namespace FormApi.Features.Corrections;

/// <summary>A measured panel that was looked at, ready to be answered.</summary>
/// <param name="Report">What explains it and what to do.</param>
/// <param name="Pull">What was pulled over what.</param>
/// <param name="LeadOutMm">The form's flat after its last fold [mm].</param>
/// <param name="Step">Step of the stop.</param>
/// <param name="Links">Links of the form that was planned, if one was.</param>
/// <param name="Shown">The request with every default shown.</param>
internal sealed record CorrectedJob(
    CorrectionReport Report, PredictionJob Pull, double LeadOutMm, Angle Step, LinksResult Links, NormalizedRequest Shown)
{
    /// <summary>Looks at a request.</summary>
    /// <param name="given">A request that passed its rules.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>corrections.…</c>, or what is in the way of a plan.</exception>
    public static CorrectedJob Of(PanelCorrectionRequest given, CancellationToken cancellation)
    {
        var request = PanelCorrectionDefaults.Apply(given);
        var units = UnitSystem.Of(request.Units);
        var (pull, canBeMade) = request.Stations is null
            ? OverPlanned(request, cancellation)
            : (OverStanding(request, units, cancellation), true);
        var step = Angle.FromDegrees(request.Corrections!.Step!.Value);
        var report = CorrectionReport.Of(
            new()
            {
                Pull = pull,
                Measured = MeasuredOf(request.Measured, pull.Form.Folds, units),
                FoldError = ScatterDefaults.Of(pull.Panel).FoldAngle,
                IsFormMeasured = request.Stations is not null,
                Rules = new(step, request.Corrections.Direction!.Value, request.Corrections.MaxSteps!.Value),
                FormMetal = FormSpecs.SheetFrom(request.Form!, units).Material.Family,
            },
            cancellation);
        return new(
            report,
            pull,
            units.ToMm(request.Form!.LeadOut!.Value),
            step,
            FormLinks.OfPlanned(request.Stations is null ? FoldedForm.AsForm(request) : null, canBeMade),
            NormalizedRequest.Of(request));
    }

    private static PredictionJob OverStanding(PanelCorrectionRequest request, UnitSystem units, CancellationToken cancellation) =>
        PredictedJob.StandingOf(
            request, request.Ends!.Value, FormSpecs.PanelFrom(FormDefaults.Apply(request.Panel, units), units), cancellation);

    private static (PredictionJob Pull, bool CanBeMade) OverPlanned(PanelCorrectionRequest request, CancellationToken cancellation)
    {
        var job = FormSpecs.From(FormDefaults.Apply(FoldedForm.AsForm(request))).Job;
        var plan = FormPlan.Compute(
            job with { Panel = job.Panel with { Predict = true } }, check => check.Verdict == Verdict.Fail, cancellation);
        return (plan.PullOf(job), plan.Verdict != PlanVerdict.CannotBeMade);
    }

    private static MeasuredPanel MeasuredOf(MeasuredPanelInput measured, int folds, UnitSystem units)
    {
        if (measured.ToFold > folds)
        {
            throw new NoSolutionException(
                "corrections.stretch", "measured.toFold", $"the form has {folds} folds, so no radius reaches to fold {measured.ToFold.Value}", $"at most {folds}");
        }

        return new()
        {
            Sweep = measured.Sweep is { } sweep ? Angle.FromDegrees(sweep) : null,
            SweepError = Angle.FromDegrees(measured.SweepError ?? 0),
            RadiusMm = measured.Radius is { } radius ? units.ToMm(radius) : null,
            RadiusErrorMm = units.ToMm(measured.RadiusError ?? 0),
            Stretch = measured is { FromFold: { } from, ToFold: { } to } ? (from - 1, to - 1) : null,
            Points = measured.Points is { } points
                ? [.. points.Select(point => new Point(units.ToMm(point.First), units.ToMm(point.Second)))]
                : null,
            PointErrorMm = units.ToMm(measured.PointError ?? 0),
        };
    }
}
