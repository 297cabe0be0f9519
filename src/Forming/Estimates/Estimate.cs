using Forming.Checks;
using Forming.Plans;
using Forming.Results;

namespace Forming.Estimates;

/// <summary>Time and cost of a planned job.</summary>
/// <remarks>No order of folds is searched: handlings and stop changes are the caller's, or an assumption.</remarks>
public sealed record Estimate
{
    /// <summary>The verdict of the plan's checks.</summary>
    public required PlanVerdict Verdict { get; init; }

    /// <summary>Checks that the plan failed.</summary>
    public required IReadOnlyList<Check> Failed { get; init; }

    /// <summary>What there is to do on one form.</summary>
    public required FormQuantities Quantities { get; init; }

    /// <summary>Panels of the batch.</summary>
    public required int Pieces { get; init; }

    /// <summary>Building all forms, by element.</summary>
    public required IReadOnlyList<WorkElement> FormWork { get; init; }

    /// <summary>The first panel, by element.</summary>
    public required IReadOnlyList<WorkElement> PanelWork { get; init; }

    /// <summary>Building all forms [min].</summary>
    public required Band FormMinutes { get; init; }

    /// <summary>The first panel [min].</summary>
    public required Band FirstPanelMinutes { get; init; }

    /// <summary>All panels of the batch, with what was learnt [min].</summary>
    public required Band PanelMinutes { get; init; }

    /// <summary>Sheet for forms and panels.</summary>
    public required IReadOnlyList<MaterialLine> Materials { get; init; }

    /// <summary>What the batch costs.</summary>
    public required EstimateCosts Costs { get; init; }

    /// <summary>Panels of the batch that show how it goes: the first, the last, and some between.</summary>
    public required IReadOnlyList<PieceFigure> Milestones { get; init; }

    /// <summary>The form against another method, or null where none is given.</summary>
    public required Comparison? Comparison { get; init; }

    /// <summary>Every value that nobody gave.</summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }

    /// <summary>What to know about the results.</summary>
    public required IReadOnlyList<ShopNote> Notes { get; init; }

    /// <summary>Cautions that the work calls for.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>What the results rest on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }

    /// <summary>Form and batch together [min].</summary>
    public Band TotalMinutes => FormMinutes + PanelMinutes;

    /// <summary>A panel of the batch on the average, the form shared out [money].</summary>
    public Band AverageCost => 1.0 / Pieces * Costs.Total;

    /// <summary>Estimates a planned job.</summary>
    /// <param name="job">The job.</param>
    /// <returns>The estimate; a form that cannot be made gets one too, with the checks that failed.</returns>
    /// <exception cref="NoSolutionException">A price names a stock sheet that is not there, or that the blank does not fit on.</exception>
    public static Estimate Of(EstimateJob job)
    {
        var (plan, rates, spreads) = (job.Plan, job.Rates, job.Spreads);
        var quantities = FormQuantities.Of(plan, job.Panel, job.Form, job.Counts);
        var formWork = BuildTime.Of(quantities, rates.Form, spreads.Form);
        var panelWork = PanelTime.Of(plan, job.Panel, rates.Panel, spreads.Panel);
        var formSheet = MaterialCost.Of(
            "form-sheet", plan.Form.Blank, job.Form.Grain, quantities.Forms, job.FormSheet, "rates.formSheet", spreads.Material);
        var panelSheet = MaterialCost.Of(
            "panel-sheet", plan.Panel.Blank, job.Panel.Grain, job.Pieces, job.PanelSheet, "rates.panelSheet", spreads.Material);

        var aMinute = rates.LabourPerHour / 60;
        var formMinutes = Band.Sum(formWork.Select(element => element.Minutes));
        var firstPanel = Band.Sum(panelWork.Select(element => element.Minutes));
        var panelMinutes = job.Learning.Total(job.Pieces) * firstPanel;
        var costs = new EstimateCosts(aMinute * formMinutes, formSheet.Cost, aMinute * panelMinutes, panelSheet.Cost);
        CostLine LineOf(Func<Band, double> bound) => new(
            bound(costs.FormLabour + costs.FormMaterial), bound(aMinute * firstPanel), bound(panelSheet.EachCost), job.Learning);

        var assumptions = AssumptionList.Of(job, quantities);
        var estimate = new Estimate
        {
            Verdict = plan.Verdict,
            Failed = [.. plan.Checks.Where(check => check.Verdict == Forming.Checks.Verdict.Fail)],
            Quantities = quantities,
            Pieces = job.Pieces,
            FormWork = formWork,
            PanelWork = panelWork,
            FormMinutes = formMinutes,
            FirstPanelMinutes = firstPanel,
            PanelMinutes = panelMinutes,
            Materials = [formSheet, panelSheet],
            Costs = costs,
            Milestones = BatchTable.Of(LineOf(static band => band.Likely), formMinutes.Likely, firstPanel.Likely, job.Pieces),
            Comparison = job.Other is { } other ? Compare(other, rates.LabourPerHour, costs.Total, job.Pieces, LineOf) : null,
            Assumptions = assumptions,
            Notes = [],
            Safety = plan.Safety,
            Basis = EstimateBasis.Of(job, assumptions),
        };
        return estimate with { Notes = EstimateNotes.Of(job, estimate) };
    }

    private static Comparison Compare(
        OtherMethod other, double labourPerHour, Band mine, int pieces, Func<Func<Band, double>, CostLine> lineOf)
    {
        var each = other.EachPiece(labourPerHour);
        var total = other.FixedCost + (each * pieces);
        return new(
            other,
            total,
            new(total - mine.High, total - mine.Likely, total - mine.Low),
            BreakEven.Search(lineOf(static band => band.Low), other.FixedCost, each),
            BreakEven.Search(lineOf(static band => band.Likely), other.FixedCost, each),
            BreakEven.Search(lineOf(static band => band.High), other.FixedCost, each));
    }
}
