using FormApi.Features.Forms;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using FormApi.Http.Units;
using Forming;
using Forming.Facets;
using Forming.Inspection;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Inspections;

/// <summary><c>POST /v1/inspections</c>: a folded form against its plan.</summary>
internal static class InspectionsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapInspections(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/inspections", Inspect)
        .Describe(
            "inspectForm",
            "Accuracy",
            "A folded form against its plan: where it is off, what that does, the fewest corrections.",
            "Takes the request of /v1/forms, or the stations of a plan, and what was measured: fold angles, with spacings or facets, or points of a template. "
            + "Answers the form as built, where it leaves the wanted curve, the closing error, what it does to the panel, and the fewest folds to correct in whole steps of the stop; proven the fewest. "
            + "Measurements that no form could give are refused with their pointer; those that are hard to believe are listed as suspect.");

    private static Results<AnswerResult<InspectionAnswer>, ProblemResult> Inspect(
        JsonBody<InspectionRequest> body, CancellationToken cancellation) => body.Answer(asked =>
    {
        var request = InspectionDefaults.Apply(asked);
        var units = UnitSystem.Of(request.Units);
        var form = FoldedForm.Of(request, cancellation);
        var rules = RulesOf(request, units);
        var panel = request.Panel is { } given ? PanelOf(request, given, form, units) : null;
        var report = InspectionReport.Of(
            new()
            {
                Planned = form.Polygon,
                Taper = form.Taper,
                Fold = form.Fold,
                Measured = MeasurementOf(request.Measured, units),
                Rules = rules,
                Ends = form.Ends ?? request.Ends ?? SteppingEnds.Half,
                Panel = panel,
                Beam = panel is null ? null : Forms.FormSpecs.BeamFrom(request.Form!, panel, units),
            },
            cancellation);
        var shown = NormalizedRequest.Of(request);
        return new AnswerResult<InspectionAnswer>(
            InspectionAnswer.From(report, form.Failed, rules.Step, form.LinksOf(request), shown),
            InspectionAnswerJson.Default.InspectionAnswer,
            shown.Fingerprint);
    });

    // Over a planned form the panel is pulled where the plan says.
    private static Forming.Jobs.PanelSpec PanelOf(
        InspectionRequest request, Forms.PanelInput panel, Forms.FoldedForm form, UnitSystem units)
    {
        var given = Forms.FormSpecs.PanelFrom(request.Stations is null ? panel : Forms.FormDefaults.Apply(panel, units), units);
        return given with { LeverMm = given.LeverMm ?? form.LeverMm };
    }

    private static CorrectionRules RulesOf(InspectionRequest request, UnitSystem units) => new(
        Angle.FromDegrees(request.Corrections!.Step!.Value),
        request.Corrections.Direction!.Value,
        request.Corrections.MaxSteps!.Value,
        Angle.FromDegrees(request.Tolerance!.Closing!.Value),
        units.ToMm(request.Tolerance.Vertex!.Value));

    private static Measurement MeasurementOf(MeasuredInput measured, UnitSystem units) => Along(measured, units) with
    {
        Angles = measured.Angles is { } angles ? [.. angles.Select(Angle.FromDegrees)] : null,
        Far = measured.Far is { } far ? Along(far, units) : null,
    };

    private static Measurement Along(IMeasuredEnd measured, UnitSystem units) => new()
    {
        SpacingsMm = measured.Spacings is { } spacings ? [.. spacings.Select(units.ToMm)] : null,
        FacetsMm = measured.Facets is { } facets ? [.. facets.Select(units.ToMm)] : null,
        Points = measured.Points is { } points
            ? [.. points
                .Select(
                    flat => (IReadOnlyList<Point>)[.. flat.Select(point => new Point(units.ToMm(point.First), units.ToMm(point.Second)))])]
            : null,
    };
}
