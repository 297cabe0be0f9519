using Forming.Results;

namespace Forming.Estimates;

/// <summary>What the values of an estimate rest on.</summary>
internal static class EstimateBasis
{
    private const string Shop = "assumptions of this project, not measured in a shop; each is listed among the assumptions while it is used";

    /// <summary>The grounds of an estimate.</summary>
    /// <param name="job">The job.</param>
    /// <param name="assumptions">Every value left at its default.</param>
    public static IReadOnlyList<Basis> Of(EstimateJob job, IReadOnlyList<Assumption> assumptions)
    {
        var basis = new List<Basis>(10)
        {
            Times("form", "a fixed time and a time for each mark, metre, strip, stop change, handling, fold and check; minutes of one person"),
            Times("panel", "a fixed time and a time for each mark, metre, pull and check of the first panel; minutes of one person"),
            new("form.elements.quantity", "folds, marks, stop settings, edges and blanks of the plan", "the plan of /v1/forms", Status.Computed),
            new("cost", "minutes × labour rate, and sheet", "arithmetic", Status.Computed),
            new("materials", job is { FormSheet: PricePerKg, PanelSheet: PricePerKg } ? "net mass of the flat blanks × price; no waste, no sheet for test strips" : "by mass: net mass of the flat blanks × price, no waste; by stock sheet: its price over the blanks it gives, offcuts go back to stock; no sheet for test strips", "arithmetic", Status.Computed),
            new("low, high", "likely × the spread of the group; all elements and groups move together, none makes up for another", "arithmetic", Status.Computed),
        };
        if (job.Learning.Learns)
        {
            basis.Add(job.Learning.Model == LearningModel.Unit
                ? new("perPiece", "the n-th panel takes n^(log2 rate) of the first: Crawford's form; sheet and form are not learnt", "form of the law after T. P. Wright, J. Aeronautical Sciences 3 (1936) 122–128", Status.FromMemory)
                : new("perPiece", "the mean of the first n panels takes n^(log2 rate) of the first: Wright's form; sheet and form are not learnt", "T. P. Wright, J. Aeronautical Sciences 3 (1936) 122–128", Status.FromMemory));
            basis.Add(new("learning.rate", "as given", "caller", Status.Caller));
        }

        if (job.Other is not null)
        {
            basis.Add(new("breakEven", $"cumulative costs compared count by count up to {BreakEven.Horizon}; proven for all counts where the costs of later panels settle it", "arithmetic; the row of differences is concave", Status.Computed));
            basis.Add(new("otherMethod", "fixed cost and cost per piece as given, minutes at the same labour rate", "caller", Status.Caller));
        }

        return basis;

        Basis Times(string group, string method) =>
            assumptions.Any(assumption => assumption.Id.StartsWith($"rates.{group}.", StringComparison.Ordinal))
                ? new(group + ".elements", method, Shop, Status.Assumption)
                : new(group + ".elements", method, "caller", Status.Caller);
    }
}
