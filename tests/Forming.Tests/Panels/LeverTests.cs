using Forming.Jobs;
using Forming.Checks;
using Forming.Facets;
using Forming.Pulling;
using Forming.Materials;
using Forming.Plans;

namespace Forming.Tests.Panels;

/// <summary>How far past the end of the curve to pull.</summary>
public class LeverTests
{
    // Half a millimetre of radius from one job to the next, through the radii past which no lever keeps the wrap in order.
    [Theory]
    [InlineData("al-6061-t6", 60)]
    [InlineData("al-5052-h32", 100)]
    [InlineData("ss-304", 220)]
    public void A_little_more_radius_changes_lever_force_and_folds_a_little(string material, double from)
    {
        FormPlan? before = null;
        var outOfOrder = 0;
        for (var i = 0; i < 200; i++)
        {
            var plan = Of(material, from + (0.5 * i));
            var (pull, check) = (plan.Panel.Pull, Workshop.CheckOf(plan, "lever"));
            Assert.Equal(pull.LeverMm, check.Value);
            Assert.Equal(pull.LongestLeverMm, check.Limit);
            Assert.Equal(pull.LeverMm <= pull.LongestLeverMm ? Verdict.Pass : Verdict.Warn, check.Verdict);
            Assert.Equal(check.Verdict == Verdict.Pass, plan.Panel.PrintThrough.Known);
            outOfOrder += check.Verdict == Verdict.Warn ? 1 : 0;
            if (before is not null)
            {
                Assert.InRange(Math.Abs(pull.LeverMm - before.Panel.Pull.LeverMm), 0, 1.5);
                Assert.InRange(pull.ForceN / before.Panel.Pull.ForceN, 1 / 1.1, 1.1);
                Assert.InRange(Math.Abs(plan.Form.Stations.Count - before.Form.Stations.Count), 0, Math.Max(2, 0.08 * plan.Form.Stations.Count));
            }

            before = plan;
        }

        Assert.InRange(outOfOrder, 1, 199);
    }

    [Fact]
    public void Where_a_facet_fits_under_the_longest_lever_it_is_taken()
    {
        var fits = 0;
        for (var radius = 80.0; radius < 100; radius += 0.25)
        {
            var plan = Of("al-6061-t6", radius);
            if (plan.Panel.Pull.LongestLeverMm < Workshop.Brake.MinFacetMm * 1.5)
                continue;
            fits++;
            Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "lever").Verdict);
            Assert.True(plan.Panel.PrintThrough.WidestFacetMm <= plan.Panel.Pull.LeverMm * (1 + 1e-9));
        }

        Assert.True(fits > 10);
    }

    [Fact]
    public void Where_nothing_fits_the_lever_is_the_shortest_that_pulls_a_facet_down_and_never_the_whole_lead_out()
    {
        var plan = Of("al-6061-t6", 200);
        Assert.Equal(0, plan.Panel.Pull.LongestLeverMm);
        var arc = 200.8 * Math.PI / 2;
        var slide = Lever.SlideMm(arc, plan.Form.Sweep.Radians, plan.Form.Sweep.Radians - (Math.PI / 2));
        Workshop.Near(FacetJudge.LeastLeverMm(plan.Panel.PrintThrough.WidestFacetMm, slide), plan.Panel.Pull.LeverMm, 1e-6);
        Assert.False(plan.Panel.PrintThrough.Known);
        var check = Workshop.CheckOf(plan, "lever");
        Assert.Equal(Verdict.Warn, check.Verdict);
        var cured = Workshop.PlanWithRemedies(PanelOf("al-6061-t6", 200));
        Assert.DoesNotContain("harder", FormattableString.Invariant(Workshop.CheckOf(cured, "lever").Remedy!.Text), StringComparison.Ordinal);
    }

    [Fact]
    public void A_softer_thicker_or_tighter_panel_wraps_in_order_at_a_longer_lever()
    {
        var sheet = new Sheet(Workshop.Of("al-6061-t6"), 1.6);
        var longest = Longest(sheet, 70);
        Assert.True(Longest(sheet with { Material = sheet.Material with { YieldMpa = 0.8 * sheet.Material.YieldMpa } }, 70) > longest);
        Assert.True(Longest(sheet with { ThicknessMm = 2 }, 70) > longest);
        Assert.True(Longest(sheet, 65) > longest);

        static double Longest(Sheet sheet, double radius) =>
            Workshop.Plan(Workshop.Panel(Workshop.Arc(radius, 90)) with { Sheet = sheet }).Panel.Pull.LongestLeverMm!.Value;
    }

    private static FormPlan Of(string material, double radius) => Workshop.Plan(PanelOf(material, radius));

    private static PanelSpec PanelOf(string material, double radius) =>
        Workshop.Panel(Workshop.Arc(radius, 90)) with { Sheet = new(Workshop.Of(material), 1.6), LeadOutMm = 220 };
}
