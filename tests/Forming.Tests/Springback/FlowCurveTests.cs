using CsCheck;
using Forming.Checks;
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

    // Anyone can draw the curve again from what is answered: through the yield at no strain, the load largest at the uniform strain.
    [Fact]
    public void The_answered_curve_begins_at_the_yield_and_necks_at_its_uniform_strain()
    {
        var material = Workshop.Of("ss-304");
        var flow = Workshop.Plan(Workshop.Panel(Bend) with { Sheet = new(material, 1.2) }).Panel.Springback.Flow;
        Workshop.Near(material.YieldMpa, Stress(0), 1e-12);
        Workshop.Near(1, Load(flow.UniformStrain) / flow.UltimateMpa, 1e-12);
        Assert.True(Load(flow.UniformStrain) > Load(flow.UniformStrain * 1.01));
        Assert.True(Load(flow.UniformStrain) > Load(flow.UniformStrain * 0.99));

        double Stress(double strain) => flow.StrengthCoefficientMpa * Math.Pow(flow.Prestrain + strain, flow.Hardening);
        double Load(double strain) => Stress(strain) * Math.Exp(-strain);
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
    public void Every_curve_passes_through_its_yield_stress_and_near_its_proof_stress_unless_it_was_replaced()
    {
        foreach (var material in MaterialCatalog.Default.All)
        {
            var flow = FlowCurve.Of(material);
            Assert.Equal(material.YieldMpa, flow.YieldMpa);
            if (flow.Origin is FlowCurveOrigin.Catalogue or FlowCurveOrigin.Estimated)
                Assert.InRange(flow.ProofMiss, 0, 0.08);
            else if (flow.ReplacedShare == 1)
                Assert.Equal(0.002, flow.Prestrain);
        }
    }

    [Fact]
    public void The_flow_curve_of_every_sheet_comes_to_the_ultimate_strength_that_its_row_states()
    {
        foreach (var material in MaterialCatalog.Default.All)
        {
            var flow = FlowCurve.Of(material);
            Assert.True(flow.IsKnown, material.Id);
            Assert.True(Math.Abs((flow.UltimateMpa / material.UltimateMpa) - 1) <= 0.15, $"{material.Id}: {flow.UltimateMpa:0} for {material.UltimateMpa} MPa");
        }
    }

    // By hand: the load K p^n e^-p of 1275 MPa and 0.45 is largest at 0.45: 1275 × 0.45^0.45 × e^-0.45 = 567.6 MPa; eps0 = 0.03723 adds e^0.03723.
    [Fact]
    public void The_ultimate_strength_of_a_flow_curve_is_its_largest_load_over_the_first_section()
    {
        var flow = FlowCurve.Of(Workshop.Of("ss-304"));
        Workshop.Near(567.6 * Math.Exp(0.03723), flow.UltimateMpa, 1e-4);
        var largest = Enumerable.Range(0, 60_000).Max(i => 290 * Math.Pow(1 + (i * 1e-5 / flow.Prestrain), 0.45) * Math.Exp(-i * 1e-5));
        Workshop.Near(largest, flow.UltimateMpa, 1e-9);
    }

    // 315 MPa and 0.54 come to 140 MPa, the row has 220: n = ln(220 e^0.225/69)/ln(1 + 0.225/0.002).
    [Fact]
    public void The_textbook_pair_of_soft_copper_misses_its_ultimate_strength_and_is_replaced()
    {
        var copper = Workshop.Of("cu-c110-soft");
        var flow = FlowCurve.Of(copper);
        Assert.Equal(FlowCurveOrigin.CatalogueReplaced, flow.Origin);
        Assert.Equal(FlowCurveMiss.Ultimate, flow.Misses);
        Workshop.Near((Math.Log(220.0 / 69) + 0.225) / Math.Log(113.5), flow.Hardening, 1e-12);

        var plan = Workshop.Plan(Workshop.Panel(Bend) with { Sheet = new(copper, 1.5) });
        Assert.Contains("ultimate strength", plan.Basis.Single(basis => basis.Quantity == "panel.flowCurve").Method, StringComparison.Ordinal);
        Assert.Contains(plan.ShopNotes, note => note.Id == "flow-curve-replaced" && FormattableString.Invariant(note.Text).Contains("misses its ultimate strength", StringComparison.Ordinal));
    }

    // 6061-T6 by its textbook pair misses the proof stress by 9.8 %: 45 % of the way from 8 to 12.
    [Fact]
    public void A_pair_that_misses_the_proof_stress_by_a_tenth_is_half_replaced()
    {
        var flow = FlowCurve.Of(Workshop.Of("al-6061-t6"));
        var miss = Math.Pow(1 + (0.002 / Math.Pow(276.0 / 410, 20)), 0.05) - 1;
        var share = (miss - 0.08) / 0.04;
        Assert.InRange(share, 0.4, 0.5);
        Workshop.Near(share, flow.ReplacedShare, 1e-9);
        var through = (Math.Log(310.0 / 276) + 0.06) / Math.Log(31);
        Workshop.Near(0.05 + (share * (through - 0.05)), flow.Hardening, 1e-12);
        Assert.Equal(FlowCurveOrigin.CatalogueReplaced, flow.Origin);
    }

    [Fact]
    public void A_hair_of_yield_stress_never_makes_the_flow_curve_jump() =>
        Gen.Select(Gen.Double[40, 300], Gen.Double[1.05, 3.5], Gen.Double[3, 50]).ForAll(
            (yield, ratio, elongation) => NoJump(Workshop.Perfect(69e3, 0.33, yield) with { UltimateMpa = yield * ratio, ElongationPercent = elongation }),
            iter: 300);

    [Fact]
    public void A_hair_of_strength_never_makes_a_catalogue_sheet_jump()
    {
        foreach (var material in MaterialCatalog.Default.All)
        {
            NoJump(material);
            NoJump(material, (sheet, share) => sheet with { UltimateMpa = sheet.YieldMpa + (share * 2 * (sheet.UltimateMpa - sheet.YieldMpa)) });
        }
    }

    [Theory]
    [InlineData("steel-cr-cs", Status.PublishedAsQuoted, "Callister")]
    [InlineData("ss-304", Status.Published, "Kalpakjian")]
    [InlineData("al-2024-t3", Status.PublishedAsQuoted, "Wikipedia")]
    [InlineData("al-6061-t6", Status.Estimated, "ultimate strength")]
    public void The_basis_takes_status_and_source_of_the_flow_curve_from_the_row(string id, Status status, string source)
    {
        var basis = Workshop.Plan(Workshop.Panel(Bend) with { Sheet = new(Workshop.Of(id), 1) }).Basis.Single(basis => basis.Quantity == "panel.flowCurve");
        Assert.Equal(status, basis.Status);
        Assert.Contains(source, basis.Source, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.08)]
    [InlineData(0.0014)]
    [InlineData(1e-300)]
    public void An_elongation_given_as_a_fraction_is_refused_and_the_message_says_percent(double elongation)
    {
        var refused = Assert.Throws<NoSolutionException>(
            () => FlowCurve.Of(Workshop.Perfect(69e3, 0.33, 145) with { UltimateMpa = 152, ElongationPercent = elongation }));
        Assert.Equal("material.elongation", refused.Code);
        Assert.Contains("percent", refused.Message, StringComparison.Ordinal);
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

    // Halves the stretch of yield stresses again and again towards the larger change: a jump would stay, a slope goes away.
    private static void NoJump(Material sheet, Func<Material, double, Material>? change = null)
    {
        change ??= (sheet, share) => sheet with { YieldMpa = sheet.UltimateMpa * (0.3 + (0.65 * share)) };
        FlowCurve At(double share) => FlowCurve.Of(change(sheet, share));
        double Change(double from, double to) =>
            Math.Abs(At(to).Hardening - At(from).Hardening) + Math.Abs(At(to).ProofMiss - At(from).ProofMiss);

        for (var start = 0.1; start < 0.95; start += 0.1)
        {
            var (low, high) = (start, start + 0.1);
            for (var i = 0; i < 40; i++)
            {
                var middle = (low + high) / 2;
                (low, high) = Change(low, middle) > Change(middle, high) ? (low, middle) : (middle, high);
            }

            Assert.True(Change(low, high) < 1e-6, $"{sheet.Id} at {start}: {Change(low, high)}");
        }
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
