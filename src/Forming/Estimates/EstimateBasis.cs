using Forming.Plans;
using Forming.Results;

namespace Forming.Estimates;

/// <summary>What the values of an estimate rest on.</summary>
internal static class EstimateBasis
{
    private const string Shop = "assumptions of this project, not measured in a shop; each is listed among the assumptions while it is used";

    /// <summary>The grounds of an estimate.</summary>
    /// <param name="job">The job.</param>
    /// <param name="assumptions">Every value left at its default.</param>
    public static IReadOnlyList<Basis> Of(EstimateJob job, IReadOnlyList<AssumedValue> assumptions)
    {
        var basis = new List<Basis>(14)
        {
            Times("form", "a fixed time and a time for each mark, metre, strip, stop change, handling, fold and check; minutes of one person"),
            Times("panel", "a fixed time and a time for each mark, metre, clamp, pull and check of the first panel; clamps by the clamp load and the width; laying up, clamping and pulling times the people whom the pull, the width and the mass need; minutes of one person"),
            new("form.elements.quantity", "folds, marks, stop settings, edges and blanks of the plan", "the plan of /v1/forms", Status.Computed),
            new("prices.cost", "minutes × labour rate, and sheet, once for form, bench and trials, and for each panel; overhead as a share of it all", "arithmetic", Status.Computed),
            new("prices.price", "the cost, or the minimum charge where that is more", "arithmetic", Status.Computed),
            new("prices.materials", "blanks nested side by side on stock, no allowance for the cut; area used: their area over what is not scrap; whole sheets: every sheet that is begun; no sheet for test strips or ribs", "arithmetic", Status.Computed),
            new("low, high", "likely × the spread of the group; all elements and groups move together, none makes up for another", "arithmetic", Status.Computed),
        };
        if (job.Learning.Learns)
        {
            basis.Add(job.Learning.Model == LearningModel.Unit
                ? new("learning", "the n-th panel takes n^(log2 rate) of the first: Crawford's form; sheet and form are not learnt", "form of the law after T. P. Wright, J. Aeronautical Sciences 3 (1936) 122–128", Status.FromMemory)
                : new("learning", "the mean of the first n panels takes n^(log2 rate) of the first: Wright's form; sheet and form are not learnt", "T. P. Wright, J. Aeronautical Sciences 3 (1936) 122–128", Status.FromMemory));
            basis.Add(new("learning.rate", "as given", "caller", Status.Caller));
        }

        basis.Add(new("comparisons.bumping", "hits of about 2° or 1/8 in pitch, whichever are fewer, the pitch at least half the narrowest die of the sheet, the die opening twice the pitch; the same blanks, trials, learning and overhead as with a form", "trade articles, none read for this project", Status.CommonPractice));
        if (job.Rolling is not null)
            basis.Add(new("comparisons.rolling", "times and price of an hour as given; the same blanks, trials, learning and overhead as with a form", "caller", Status.Caller));
        if (job.Other is not null)
            basis.Add(new("comparisons.other", "fixed cost and cost per piece as given, minutes at the same labour rate and overhead", "caller", Status.Caller));
        basis.Add(new("comparisons.breakEven", $"cumulative costs, before any minimum charge and with whole sheets taken as full, compared count by count up to {BreakEven.Horizon}; proven for all counts where the costs of later panels settle it", "arithmetic", Status.Computed));
        basis.AddRange(job.Assumed.Select(AssumptionBasis.Of));
        return basis;

        Basis Times(string group, string method) =>
            assumptions.Any(assumption => assumption.Id.StartsWith($"rates.{group}.", StringComparison.Ordinal))
                ? new(group + ".elements", method, Shop, Status.Assumption)
                : new(group + ".elements", method, "caller", Status.Caller);
    }
}
