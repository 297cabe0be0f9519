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

    /// <summary>Who and what a panel needs at the bench.</summary>
    public required Crew Crew { get; init; }

    /// <summary>Panels bent before the first good one.</summary>
    public required int Trials { get; init; }

    /// <summary>Building all forms, by element.</summary>
    public required IReadOnlyList<WorkElement> FormWork { get; init; }

    /// <summary>Getting the bench ready.</summary>
    public required WorkElement SetUp { get; init; }

    /// <summary>The first panel, by element.</summary>
    public required IReadOnlyList<WorkElement> PanelWork { get; init; }

    /// <summary>Building all forms [min].</summary>
    public required Band FormMinutes { get; init; }

    /// <summary>The first panel [min].</summary>
    public required Band FirstPanelMinutes { get; init; }

    /// <summary>Time and cost at every count of panels that was asked for, in that order.</summary>
    public required IReadOnlyList<PriceRow> Prices { get; init; }

    /// <summary>The form against other ways to make the panel.</summary>
    public required IReadOnlyList<Comparison> Comparisons { get; init; }

    /// <summary>Every value that nobody gave.</summary>
    public required IReadOnlyList<AssumedValue> Assumptions { get; init; }

    /// <summary>What to know about the results.</summary>
    public required IReadOnlyList<ShopNote> Notes { get; init; }

    /// <summary>Cautions that the work calls for.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>What the results rest on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }

    /// <summary>Estimates a planned job.</summary>
    /// <param name="job">The job.</param>
    /// <returns>The estimate; a form that cannot be made gets one too, with the checks that failed.</returns>
    /// <exception cref="NoSolutionException">A price names a stock sheet that is not there, or that the blank does not fit on.</exception>
    public static Estimate Of(EstimateJob job)
    {
        var (plan, rates, spreads) = (job.Plan, job.Rates, job.Spreads);
        var quantities = FormQuantities.Of(plan, job.Panel, job.Form, job.Counts);
        var crew = Crew.Of(plan, job.Panel, job.Counts);
        var formWork = BuildTime.Of(quantities, rates.Form, spreads.Form);
        var setUp = PanelTime.SetUp(quantities.Forms, rates.Panel.SetUp, spreads.Panel);
        var panelWork = PanelTime.Of(plan, job.Panel, crew, rates.Panel, spreads.Panel);
        var pricing = new Pricing(
            job,
            Band.Sum(formWork.Select(element => element.Minutes)),
            setUp.Minutes,
            Band.Sum(panelWork.Select(element => element.Minutes)),
            quantities.Forms,
            SheetBill.Of("form-sheet", plan.Form.Blank, job.Form.Grain, job.FormSheet, "rates.formSheet"),
            SheetBill.Of("panel-sheet", plan.Panel.Blank, job.Panel.Grain, job.PanelSheet, "rates.panelSheet"));
        var prices = pricing.Rows();
        var hits = job.Bumped.HitsOf(job.Panel, crew);
        var assumptions = AssumptionList.Of(job, quantities, crew, pricing.FormBill, pricing.PanelBill);
        var estimate = new Estimate
        {
            Verdict = plan.Verdict,
            Failed = [.. plan.Checks.Where(check => check.Verdict == Forming.Checks.Verdict.Fail)],
            Quantities = quantities,
            Crew = crew,
            Trials = job.Trials,
            FormWork = formWork,
            SetUp = setUp,
            PanelWork = panelWork,
            FormMinutes = pricing.FormMinutes,
            FirstPanelMinutes = pricing.FirstPanelMinutes,
            Prices = prices,
            Comparisons = OtherWays.Of(job, pricing, PanelTime.OfAnyMethod(panelWork), hits, prices),
            Assumptions = assumptions,
            Notes = [],
            Safety = plan.Safety,
            Basis = EstimateBasis.Of(job, assumptions),
        };
        return estimate with { Notes = EstimateNotes.Of(job, estimate) };
    }
}
