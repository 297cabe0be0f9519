using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans;
using Forming.Prediction;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Prediction;

/// <summary>Random jobs whose plans expect the wrap to run in order: lever within its longest, print-through known.</summary>
internal static class InOrderPlans
{
    private static readonly Finish[] Finishes = [Finish.Gloss, Finish.Satin, Finish.Hidden];

    /// <summary>Draws jobs.</summary>
    /// <param name="seed">Where to begin.</param>
    public static IEnumerable<PredictionJob> From(int seed)
    {
        var random = new Random(seed);
        var materials = MaterialCatalog.Default.All;
        while (true)
        {
            var panel = new PanelSpec
            {
                Sheet = new(materials[random.Next(materials.Count)], Between(0.5, 3)),
                Curve = Workshop.Arc(Between(40, 600), Between(15, 180)),
                WidthMm = 300,
                LeadInMm = 80,
                LeadOutMm = Between(40, 300),
                Finish = Finishes[random.Next(Finishes.Length)],
                Springback = new PureBending(),
            };
            var ends = random.Next(2) == 0 ? SteppingEnds.Half : SteppingEnds.Full;
            var form = Workshop.Form(new() { Ends = ends, Rule = (SteppingRule)random.Next(3) });
            var brake = Workshop.Brake with { MinFacetMm = Between(1, 20) };
            if (JobOf(panel, form, brake) is { } job)
                yield return job;
        }

        double Between(double least, double most) => least + ((most - least) * random.NextDouble());
    }

    /// <summary>The pull that a plan leads to; null where there is no plan, or its wrap is not known to run in order.</summary>
    public static PredictionJob? JobOf(PanelSpec panel, FormSpec form, BrakeSpec brake)
    {
        FormPlan plan;
        try
        {
            plan = Workshop.Plan(panel, form, brake);
        }
        catch (NoSolutionException)
        {
            return null;
        }

        if (!plan.Panel.PrintThrough.Known || Workshop.CheckOf(plan, "lever").Verdict != Verdict.Pass)
            return null;
        return new()
        {
            Panel = panel,
            Form = new(
                [.. plan.Form.Stations.SkipLast(1).Select(station => station.FacetAfterMm)],
                [.. plan.Form.Stations.Select(station => station.FoldAngle.Radians)],
                form.FoldRadiusMm + form.Sheet.ThicknessMm),
            Ends = form.Stepping.Ends,
            LeverMm = plan.Panel.Pull.LeverMm,
            LongestLeverMm = plan.Panel.Pull.LongestLeverMm,
        };
    }
}
