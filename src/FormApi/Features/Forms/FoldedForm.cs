using FormApi.Http.Links;
using FormApi.Http.Units;
using Forming;
using Forming.Checks;
using Forming.Facets;
using Forming.Folds;
using Forming.Inspection;
using Forming.Layout;
using Forming.Plans;
using Forming.Results;

namespace FormApi.Features.Forms;

/// <summary>The form that a request is about, as it should be.</summary>
/// <param name="Polygon">Its folds and flats.</param>
/// <param name="Fold">Shape of its folds.</param>
/// <param name="Ends">Half or full folds at its ends; null where it is given by its stations.</param>
/// <param name="Failed">Checks that its plan failed.</param>
/// <param name="Taper">What a form has whose folds are not parallel, or null.</param>
/// <param name="LeverMm">Where its plan has the panel pulled [mm]; null where it is given by its stations.</param>
internal sealed record FoldedForm(
    FoldedPolygon Polygon,
    FoldShape Fold,
    SteppingEnds? Ends,
    IReadOnlyList<Check> Failed,
    TaperedForm? Taper = null,
    double? LeverMm = null)
{
    /// <summary>Plans it, or takes it as given.</summary>
    /// <param name="request">The request with its defaults filled in.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>folds.taper</c>, or what is in the way of a plan.</exception>
    public static FoldedForm Of(IFoldedRequest request, CancellationToken cancellation)
    {
        if (request.Stations is null)
            return Planned(request, cancellation);
        if (request.Panel?.Curve is TaperInput)
        {
            throw new NoSolutionException(
                "folds.taper", "panel.curve", $"stations say how parallel folds lie, and those of a taper are not parallel", $"any curve but a taper, or the request for its plan in place of stations");
        }

        return Standing(request);
    }

    /// <summary>The request as one for a form; only without stations.</summary>
    /// <param name="request">The request.</param>
    public static FormRequest AsForm(IFoldedRequest request) =>
        new(request.Units, request.Panel!, request.Form, request.Brake, request.Marks);

    /// <summary>Links of the form, where it is planned.</summary>
    /// <param name="request">The request.</param>
    public LinksResult LinksOf(IFoldedRequest request) =>
        FormLinks.OfPlanned(request.Stations is null ? AsForm(request) : null, Failed.Count == 0);

    private static FoldedForm Planned(IFoldedRequest request, CancellationToken cancellation)
    {
        var specs = FormSpecs.From(FormDefaults.Apply(AsForm(request)));
        var plan = FormPlan.Compute(specs.Job, check => check.Verdict == Verdict.Fail, cancellation);
        return new(
            FoldedPolygon.Of(plan.Form.Stations, specs.Form.LeadInMm),
            new(specs.Form.FoldRadiusMm, specs.Form.Sheet.ThicknessMm, plan.Form.NeutralFactor),
            specs.Form.Stepping.Ends,
            [.. plan.Checks.Where(check => check.Verdict == Verdict.Fail)],
            plan.Taper is null ? null : TaperedForm.Of(plan, specs.Form.LeadInMm, specs.Form.LeadOutMm),
            plan.PullOf(specs.Job).LeverMm);
    }

    private static FoldedForm Standing(IFoldedRequest request)
    {
        var units = UnitSystem.Of(request.Units);
        var (thickness, radius) = (FormSpecs.SheetFrom(request.Form!, units).ThicknessMm, units.ToMm(request.Form!.FoldRadius!.Value));
        return new(
            new(
                [units.ToMm(request.Form.LeadIn!.Value), .. request.Stations!.Select(station => units.ToMm(station.FacetAfter))],
                [.. request.Stations!.Select(station => Angle.FromDegrees(station.Angle).Radians)]),
            new(
                radius,
                thickness,
                request.Form.NeutralFactor
                    ?? NeutralLine.Factor(Math.Max(radius, NeutralLine.SmallestRadiusOverThickness * thickness), thickness)),
            null,
            []);
    }
}
