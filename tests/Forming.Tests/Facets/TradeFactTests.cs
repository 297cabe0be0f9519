using Forming.Checks;
using Forming.Materials;
using Forming.Plans;
using Forming.Springback;

namespace Forming.Tests.Facets;

/// <summary>What the trade knows of facets in half-hard aluminium of 1/16 in (common practice, no source).</summary>
public class TradeFactTests
{
    private const double Inch = 25.4;

    [Theory]
    [Published("trade-facts.csv")]
    public void The_sheet_as_simulated_shows_its_facets_as_the_trade_and_the_simulation_say(
        double facetIn, double foldDegrees, double folds, double lever, string smooth, double leastRipple, double mostRipple)
    {
        var plan = Wrapped(Workshop.Swift(69e3, 0.33, 145, 0.03, 0.002), facetIn * Inch, foldDegrees, (int)folds, lever);
        var printThrough = plan.Panel.PrintThrough;
        Assert.True(printThrough.Known, printThrough.WhyUnknown);
        Assert.InRange(printThrough.RippleMm!.Value, leastRipple, mostRipple);
        Assert.Equal(smooth == "yes" ? Verdict.Pass : Verdict.Warn, Workshop.CheckOf(plan, "facet-width").Verdict);
    }

    [Theory]
    [Published("trade-facts.csv")]
    public void Half_hard_3003_with_its_estimated_flow_curve_does_the_same_under_a_satin_finish(
        double facetIn, double foldDegrees, double folds, double lever, string smooth)
    {
        var plan = Wrapped(Workshop.Of("al-3003-h14"), facetIn * Inch, foldDegrees, (int)folds, lever);
        Assert.True(plan.Panel.PrintThrough.Known, plan.Panel.PrintThrough.WhyUnknown);
        Assert.Equal(smooth == "yes" ? Verdict.Pass : Verdict.Warn, Workshop.CheckOf(plan, "facet-width").Verdict);
    }

    // The form itself is given: equal facets c at folds a, so the fold centres lie on a circle of (c - 2 p tan(a/2))/(2 sin(a/2)).
    private static FormPlan Wrapped(Material metal, double facet, double foldDegrees, int folds, double lever)
    {
        const double outer = 3;
        var half = foldDegrees / 2 * Workshop.Degree;
        var contact = ((facet - (2 * outer * Math.Tan(half))) / (2 * Math.Sin(half))) + outer;
        var panel = Workshop.Panel(Workshop.Arc(contact, (folds - 1) * foldDegrees)) with
        {
            Sheet = new(metal, 1.5875),
            Springback = new MeasuredFactor(1),
            LeverMm = lever,
        };
        var plan = Workshop.Plan(panel, Workshop.Form(new() { Folds = folds }) with { Sheet = new(Workshop.Of("steel-cr-cs"), 1.5), FoldRadiusMm = 1.5 });
        Assert.Equal(folds, plan.Form.Stations.Count);
        Workshop.Within(1e-6, facet, plan.Panel.PrintThrough.WidestFacetMm);
        return plan;
    }
}
