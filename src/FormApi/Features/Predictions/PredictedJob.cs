using FormApi.Features.Forms;
using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans;
using Forming.Prediction;

namespace FormApi.Features.Predictions;

/// <summary>A request that was predicted, ready to be answered.</summary>
/// <param name="Report">The prediction with its checks and grounds.</param>
/// <param name="Panel">The panel.</param>
/// <param name="Links">Links of the form that was planned, if one was.</param>
/// <param name="Shown">The request with every default shown.</param>
internal sealed record PredictedJob(PredictionReport Report, PanelSpec Panel, LinksResult Links, NormalizedRequest Shown)
{
    /// <summary>Predicts a request.</summary>
    /// <param name="given">A request that passed its rules.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="Forming.Results.NoSolutionException">There is no such form.</exception>
    public static PredictedJob Of(PredictionRequest given, CancellationToken cancellation)
    {
        var request = PredictionDefaults.Apply(given);
        var (report, panel) = request.Stations is not null
            ? OverStanding(request, UnitSystem.Of(request.Units), cancellation)
            : OverPlanned(FormSpecs.From(FormDefaults.Apply(PredictionDefaults.AsForm(request))), cancellation);
        var links = FormLinks.OfPlanned(
            request.Stations is null ? PredictionDefaults.AsForm(request) : null,
            report.Checks.All(check => check.Verdict != Forming.Checks.Verdict.Fail));
        return new(report, panel, links, NormalizedRequest.Of(request));
    }

    private static (PredictionReport Report, PanelSpec Panel) OverPlanned(FormSpecs specs, CancellationToken cancellation) =>
        (PredictionReport.Of(specs.Job, cancellation), specs.Panel);

    private static (PredictionReport Report, PanelSpec Panel) OverStanding(
        PredictionRequest request, UnitSystem units, CancellationToken cancellation)
    {
        var panel = FormSpecs.PanelFrom(FormDefaults.Apply(request.Panel, units), units);
        var job = StandingOf(request, request.Ends!.Value, panel, cancellation);
        return (PredictionReport.Of(job, FormSpecs.SheetFrom(request.Form!, units).Material.Family, cancellation), panel);
    }

    /// <summary>A panel over a form given by its stations.</summary>
    /// <param name="request">A request with its defaults filled in, and with stations.</param>
    /// <param name="ends">Half or full folds at its ends.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static PredictionJob StandingOf(
        IFoldedRequest request, SteppingEnds ends, PanelSpec panel, CancellationToken cancellation)
    {
        var (units, stations) = (UnitSystem.Of(request.Units), request.Stations!);
        var sheet = FormSpecs.SheetFrom(request.Form!, units);
        var form = new StandingForm(
            [.. stations.SkipLast(1).Select(station => units.ToMm(station.FacetAfter))],
            [.. stations.Select(station => Angle.FromDegrees(station.Angle).Radians)],
            units.ToMm(request.Form!.FoldRadius!.Value) + sheet.ThicknessMm);
        var beam = FormSpecs.BeamFrom(request.Form, panel, units);
        return StandingJob.Of(form, units.ToMm(request.Form.LeadOut!.Value), ends, panel, beam, cancellation) with
        {
            Units = FormSpecs.UnitsOf(request.Units),
        };
    }
}
