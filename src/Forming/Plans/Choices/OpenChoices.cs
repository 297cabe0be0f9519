using Forming.Jobs;
using Forming.Results;
using Forming.Springback;

namespace Forming.Plans.Choices;

/// <summary>What a shop would take where an asker leaves the form's sheet or the brake open; by quick plans of the same job.</summary>
public static class OpenChoices
{
    // A quick plan reads up to a sixth less than the simulated pull, which is to stay below four fifths.
    private const double MostShareOfYield = 2.0 / 3;

    /// <summary>The thinnest sheet whose bare form stays well within its yield under the pull; ribs where none does.</summary>
    /// <param name="job">The job; its form has any thickness.</param>
    /// <param name="thicknessesMm">The sheets there are, thinnest first [mm].</param>
    /// <param name="foldRadius">Inside radius of the folds by thickness [mm].</param>
    /// <param name="ribbed">Which of the sheets is taken with ribs, by its place.</param>
    /// <param name="mayRib">Whether ribs may be taken; else the thickest sheet is, where none would do.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>Place of the sheet, and what supports the form.</returns>
    public static (int Place, FormBacking Backing) SheetOf(
        FormJob job,
        IReadOnlyList<double> thicknessesMm,
        Func<double, double> foldRadius,
        int ribbed,
        bool mayRib,
        CancellationToken cancellation = default)
    {
        if (job.Form.Backing == FormBacking.Ribs)
            return (ribbed, FormBacking.Ribs);
        for (var place = 0; place < thicknessesMm.Count; place++)
        {
            var thickness = thicknessesMm[place];
            var bare = job with
            {
                Form = job.Form with { Sheet = job.Form.Sheet with { ThicknessMm = thickness }, FoldRadiusMm = foldRadius(thickness) },
            };
            if (QuickPlan(bare, cancellation) is { } plan && plan.Form.Give.ShareOfYield < MostShareOfYield)
                return (place, FormBacking.None);
        }

        return mayRib ? (ribbed, FormBacking.Ribs) : (thicknessesMm.Count - 1, FormBacking.None);
    }

    /// <summary>Length of the longest fold [mm]: the form's width, or along a tapered form's longest line.</summary>
    /// <param name="job">The job.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static double LongestFoldMm(FormJob job, CancellationToken cancellation = default) =>
        QuickPlan(job, cancellation)?.Form.Stations.Max(station => station.Line?.LengthMm) ?? job.Form.WidthMm;

    // Where there is no plan the asker is told so by the plan itself.
    private static FormPlan? QuickPlan(FormJob job, CancellationToken cancellation)
    {
        var quick = job.Panel.Springback is SolvedOnWrap solved
            ? job with { Panel = job.Panel with { Springback = new PureBending(solved.YieldMpa) } }
            : job;
        try
        {
            return FormPlan.Compute(quick, _ => false, cancellation);
        }
        catch (NoSolutionException)
        {
            return null;
        }
    }
}
