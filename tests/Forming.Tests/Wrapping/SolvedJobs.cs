using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans;
using Forming.Prediction;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Wrapping;

/// <summary>Random jobs solved on the simulated pull, and what comes off the plans that were returned.</summary>
internal static class SolvedJobs
{
    private static readonly Finish[] Finishes = [Finish.Gloss, Finish.Satin, Finish.Hidden];

    /// <summary>Jobs whose panel springs back by a factor within limits, planned with enough folds on forms that can be made and stay elastic.</summary>
    /// <param name="seed">Where to begin.</param>
    /// <param name="leastFactor">Least springback factor, curvature left over curvature formed.</param>
    /// <param name="mostFactor">From this factor on a panel is not drawn.</param>
    /// <param name="leastFolds">Fewest folds.</param>
    /// <param name="fits">Which to draw by springback over the whole curve and sweep of the form, both in degrees; null for all.</param>
    public static IEnumerable<SolvedJob> From(
        int seed, double leastFactor, double mostFactor, int leastFolds, Func<double, double, bool>? fits = null)
    {
        var random = new Random(seed);
        Material[] materials = [.. MaterialCatalog.Default.All.Where(material => BendingLaw.Of(new(material, 1)).Flow.IsKnown)];
        while (true)
        {
            var radius = 50 * Math.Pow(8, random.NextDouble());
            var panel = Workshop.Panel(Workshop.Arc(radius, Between(30, 110))) with
            {
                Sheet = new(materials[random.Next(materials.Length)], Between(0.7, 2)),
                LeadInMm = Between(60, 120),
                LeadOutMm = Between(100, 200),
                Finish = Finishes[random.Next(Finishes.Length)],
                Springback = new SolvedOnWrap(),
            };
            var form = Workshop.Form(new() { Folds = random.Next(3) == 0 ? random.Next(6, 15) : null }) with
            {
                Sheet = new(Workshop.Of("steel-cr-cs"), Between(1.5, 3)),
                Backing = random.Next(2) == 0 ? FormBacking.None : FormBacking.Ribs,
            };
            var formed = panel.Law().LoadedFor(1 / (radius + (panel.Sheet.ThicknessMm / 2))).Curvature;
            var factor = 1 / (radius + (panel.Sheet.ThicknessMm / 2)) / formed;
            var (sweep, formSweep) = (((ArcCurve)panel.Curve).Sweep.Degrees, ((ArcCurve)panel.Curve).Sweep.Degrees / factor);
            if (!(factor >= leastFactor && factor < mostFactor && fits?.Invoke(formSweep - sweep, formSweep) != false))
                continue;
            if (PlanOf(panel, form) is { } plan && plan.Form.Stations.Count >= leastFolds && CanBeMade(plan))
                yield return new(panel, form, plan, factor);
        }

        double Between(double least, double most) => least + ((most - least) * random.NextDouble());
    }

    // The brake folds every facet, and the form does not bend for good under the pull.
    private static bool CanBeMade(FormPlan plan) =>
        Workshop.CheckOf(plan, "minimum-facet").Verdict == Verdict.Pass && Workshop.CheckOf(plan, "form-yield").Verdict != Verdict.Fail;

    private static FormPlan? PlanOf(PanelSpec panel, FormSpec form)
    {
        try
        {
            return Workshop.Plan(panel, form);
        }
        catch (NoSolutionException)
        {
            return null;
        }
    }
}

/// <summary>A job and its plan.</summary>
/// <param name="Panel">The panel.</param>
/// <param name="Form">The form.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Factor">Springback factor by pure bending.</param>
internal sealed record SolvedJob(PanelSpec Panel, FormSpec Form, FormPlan Plan, double Factor)
{
    /// <summary>The panel that comes off the plan's own stations, pulled over them anew.</summary>
    public PredictedShape? ComesOff() => PanelPrediction.Of(new()
    {
        Panel = Panel,
        Form = new(
            [.. Plan.Form.Stations.SkipLast(1).Select(station => station.FacetAfterMm)],
            [.. Plan.Form.Stations.Select(station => station.FoldAngle.Radians)],
            Form.FoldRadiusMm + Form.Sheet.ThicknessMm),
        Beam = FormBeam.Of(new(Panel, Form, Workshop.Brake, Workshop.Marks)),
        Ends = Form.Stepping.Ends,
        LeverMm = Plan.Panel.Pull.LeverMm,
        LongestLeverMm = Plan.Panel.Pull.LongestLeverMm,
    }).Shape;

    /// <summary>Why the panel that comes off is not the one that is wanted; null where it is.</summary>
    /// <param name="leastMm">Allowed miss after the best fit, for short curves [mm].</param>
    /// <param name="share">And as a share of the curve.</param>
    /// <param name="radiusShare">Allowed miss of the radius over the middle folds, as a share.</param>
    public string? Misses(double leastMm, double share, double radiusShare)
    {
        var what = FormattableString.Invariant($"{Panel.Sheet.Material.Id} {Panel.Sheet.ThicknessMm:0.00} {Panel.Curve}, factor {Factor:0.00}, {Plan.Form.Stations.Count} folds, {Form.Backing}, {Panel.Finish.Name}, lever {Plan.Panel.Pull.LeverMm:0} on {Panel.LeadOutMm:0}");
        if (ComesOff() is not { } shape)
            return $"{what}: {Plan.Panel.Prediction?.WhyNot}";
        var sweep = (shape.Sweep - shape.WantedSweep).Degrees;
        var radius = (shape.RadiusMm / shape.WantedRadiusMm) - 1;
        return Math.Abs(sweep) <= 0.05 && shape.MissMm <= Math.Max(leastMm, share * shape.WantedLengthMm) && Math.Abs(radius ?? 1) <= radiusShare
            ? null
            : FormattableString.Invariant($"{what}: sweep {sweep:0.00}° over, fitted miss {shape.MissMm:0.00} mm, radius {radius:P1} over");
    }
}
