using Forming.Curves;
using Forming.Materials;
using Forming.Plans;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Springback;

/// <summary>Where the hardening of a sheet comes from.</summary>
public class FlowCurveTests
{
    private static readonly PanelCurve Bend = Workshop.Arc(60, 90);

    [Fact]
    public void Half_hard_3003_hardens_weakly()
    {
        var flow = FlowCurve.Of(Workshop.Of("al-3003-h14"));
        Assert.Equal(FlowCurveOrigin.Estimated, flow.Origin);
        Assert.InRange(flow.Hardening, 0.03, 0.05);
    }

    // 145 MPa yield, 152 MPa ultimate, half of 8 %: eps0 + eu = n, K n^n = ultimate e^eu, K eps0^n = yield.
    [Fact]
    public void The_estimate_keeps_Consideres_three_conditions()
    {
        var flow = FlowCurve.Of(Workshop.Of("al-3003-h14"));
        double n = flow.Hardening, k = 145 / Math.Pow(flow.Prestrain, n);
        Workshop.Near(n, flow.Prestrain + 0.04, 1e-12);
        Workshop.Near(152 * Math.Exp(0.04), k * Math.Pow(n, n), 1e-12);
    }

    [Fact]
    public void Annealed_2024_whose_estimate_misses_its_proof_stress_gets_a_curve_through_it()
    {
        var flow = FlowCurve.Of(Workshop.Of("al-2024-o"));
        Assert.Equal(FlowCurveOrigin.EstimateReplaced, flow.Origin);
        Assert.Equal(0.002, flow.Prestrain);
        // n = ln(185 e^0.1/75)/ln(1 + 0.1/0.002)
        Workshop.Near((Math.Log(185.0 / 75) + 0.1) / Math.Log(51), flow.Hardening, 1e-12);
    }

    // (34/180)^(1/0.2) = 0.00024: at 0.2 % the textbook pair stands 56 % above the proof stress.
    [Fact]
    public void The_textbook_pair_of_soft_1100_misses_its_proof_stress_and_is_replaced()
    {
        var flow = FlowCurve.Of(Workshop.Of("al-1100-o"));
        Assert.Equal(FlowCurveOrigin.CatalogueReplaced, flow.Origin);
        Assert.Equal(0.002, flow.Prestrain);
        Workshop.Near((Math.Log(90.0 / 34) + 0.175) / Math.Log(1 + (0.175 / 0.002)), flow.Hardening, 1e-12);
    }

    [Fact]
    public void The_textbook_pair_of_annealed_304_fits_its_proof_stress_and_stays()
    {
        var flow = FlowCurve.Of(Workshop.Of("ss-304"));
        Assert.Equal(FlowCurveOrigin.Catalogue, flow.Origin);
        Assert.Equal(0.45, flow.Hardening);
        Workshop.Near(290, 1275 * Math.Pow(flow.Prestrain, 0.45), 1e-12);
    }

    [Fact]
    public void Every_curve_passes_through_its_yield_stress_and_ends_within_a_tenth_of_the_proof_stress_unless_it_was_replaced()
    {
        foreach (var material in MaterialCatalog.Default.All)
        {
            var flow = FlowCurve.Of(material);
            Assert.Equal(material.YieldMpa, flow.YieldMpa);
            if (flow.Origin is FlowCurveOrigin.Catalogue or FlowCurveOrigin.Estimated)
                Assert.InRange(flow.ProofMiss, 0, 0.10);
            else if (flow.IsKnown)
                Assert.Equal(0.002, flow.Prestrain);
        }
    }

    [Fact]
    public void The_callers_own_pair_is_used_as_given_and_the_plan_warns_where_it_misses_the_proof_stress()
    {
        var soft = Workshop.Hardening(69e3, 0.33, 34, 0.2, 180);
        var flow = FlowCurve.Of(soft);
        Assert.Equal(FlowCurveOrigin.Caller, flow.Origin);
        Assert.Equal(0.2, flow.Hardening);

        var plan = Workshop.Plan(Workshop.Panel(Bend) with { Sheet = new(soft, 1.5) });
        Assert.Equal(Verdict.Warn, Workshop.CheckOf(plan, "flow-curve").Verdict);
        Assert.Equal(Status.Caller, plan.Basis.Single(basis => basis.Quantity == "panel.flowCurve").Status);
    }

    [Fact]
    public void The_callers_own_pair_that_fits_passes()
    {
        var plan = Workshop.Plan(Workshop.Panel(Bend) with { Sheet = new(Workshop.Hardening(193e3, 0.28, 290, 0.45, 1275), 1.5) });
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "flow-curve").Verdict);
    }

    [Theory]
    [InlineData(145.0, 145.0, 8.0)]
    [InlineData(145.0, 140.0, 8.0)]
    [InlineData(145.0, 160.0, null)]
    [InlineData(145.0, 160.0, 0.0)]
    public void A_sheet_of_which_too_little_is_known_does_not_harden_and_its_print_through_is_not_known(
        double yield, double ultimate, double? elongation)
    {
        var metal = Workshop.Perfect(69e3, 0.33, yield) with { UltimateMpa = ultimate, ElongationPercent = elongation };
        var flow = FlowCurve.Of(metal);
        Assert.Equal(FlowCurveOrigin.Unknown, flow.Origin);
        Assert.False(flow.IsKnown);

        var plan = Workshop.Plan(Workshop.Panel(Bend) with { Sheet = new(metal, 1.5) });
        NotKnown(plan);
        Assert.Contains("hardening", plan.Panel.PrintThrough.WhyUnknown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.001, 500)]
    [InlineData(0.2, 1e9)]
    public void A_pair_that_would_yield_at_a_strain_no_sheet_has_is_refused(double n, double strengthCoefficient)
    {
        var refused = Assert.Throws<NoSolutionException>(() => FlowCurve.Of(Workshop.Hardening(69e3, 0.33, 100, n, strengthCoefficient)));
        Assert.Equal("material.flow-curve", refused.Code);
    }

    [Fact]
    public void What_was_replaced_is_said()
    {
        var plan = Workshop.Plan(Workshop.Panel(Bend) with { Sheet = new(Workshop.Of("al-1100-o"), 1.5) });
        Assert.Contains(plan.ShopNotes, note => note.Id == "flow-curve-replaced");
        Assert.Equal(Status.Estimated, plan.Basis.Single(basis => basis.Quantity == "panel.flowCurve").Status);
    }

    private static void NotKnown(FormPlan plan)
    {
        var printThrough = plan.Panel.PrintThrough;
        Assert.False(printThrough.Known);
        Assert.Null(printThrough.RippleMm);
        Assert.Null(printThrough.Slope);
        Assert.Null(printThrough.AllowedFacetMm);
        Assert.Equal(Verdict.Warn, Workshop.CheckOf(plan, "facet-width").Verdict);
    }
}
