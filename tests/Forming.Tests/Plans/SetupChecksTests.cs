using CsCheck;
using Forming.Checks;
using Forming.Curves;
using Forming.Jobs;
using Forming.Layout;
using Forming.Plans;
using Forming.Results;
using Forming.Tests.Tapers;

namespace Forming.Tests.Plans;

/// <summary>Whether panel and form can be set up as the plan says.</summary>
public class SetupChecksTests
{
    private static readonly PanelSpec Arc = Workshop.Panel(Workshop.Arc(90, 90)) with { LeverMm = 100 };

    [Theory]
    [InlineData(100, 0, false, Verdict.Pass)]
    [InlineData(202, 0, false, Verdict.Pass)]
    [InlineData(277, 0, false, Verdict.Warn)]
    [InlineData(210, 10, false, Verdict.Pass)]
    [InlineData(210, 10, true, Verdict.Warn)]
    public void Nobody_pulls_where_the_sheet_has_ended(double lever, double trim, bool mirrored, Verdict expected)
    {
        var plan = Workshop.Plan(Arc with { LeverMm = lever, LeadOutMm = 202, TrimMm = trim, Mirrored = mirrored });
        var check = Workshop.CheckOf(plan, "pull-line");
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(lever, check.Value);
        Assert.Equal(mirrored ? 202 : 202 + trim, check.Limit);
        Assert.Equal(expected == Verdict.Pass, plan.Panel.Marks.Any(mark => mark.Name == "pull here"));
    }

    [Fact]
    public void Every_mark_lies_on_the_blank() =>
        RandomJobs.Any.ForAll(
            job =>
            {
                if (Planned(job) is { Taper: null } plan)
                    Assert.All(plan.Panel.Marks.Where(mark => mark.Name.EndsWith("pull here", StringComparison.Ordinal)), mark => Assert.InRange(mark.AtMm, 0, plan.Panel.Blank.LengthMm));
            },
            iter: 60);

    [Theory]
    [InlineData(0, 0, Verdict.Fail)]
    [InlineData(0, 30, Verdict.Pass)]
    [InlineData(15, 0, Verdict.Warn)]
    [InlineData(30, 0, Verdict.Pass)]
    public void A_panel_with_nothing_to_clamp_is_not_to_be_pulled(double leadIn, double trim, Verdict expected)
    {
        var plan = Workshop.Plan(Arc with { LeadInMm = leadIn, TrimMm = trim });
        var check = Workshop.CheckOf(plan, "panel-clamp");
        Assert.Equal(expected, check.Verdict);
        // With half folds at the ends the first mold line lies a hair past the tangent line.
        Assert.InRange(check.Value!.Value, leadIn + trim, leadIn + trim + 1);
        Assert.Equal(25, check.Limit);
    }

    [Fact]
    public void A_flat_before_the_curve_can_be_clamped_too()
    {
        var chain = new SegmentsCurve([new FlatCurve(40), Workshop.Arc(90, 90)]);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(Workshop.Plan(Arc with { Curve = chain, LeadInMm = 0 }), "panel-clamp").Verdict);
    }

    [Theory]
    [InlineData(300, Verdict.Pass)]
    [InlineData(320, Verdict.Pass)]
    [InlineData(280, Verdict.Warn)]
    public void A_form_narrower_than_the_panel_leaves_its_edges_without_one(double width, Verdict expected) =>
        Assert.Equal(expected, Workshop.CheckOf(Workshop.Plan(Arc, Workshop.Form() with { WidthMm = width }), "form-width").Verdict);

    [Fact]
    public void A_taper_has_a_form_of_its_own_length() =>
        Assert.DoesNotContain(
            TaperJobs.Plan(new TaperCurve(TaperJobs.Arc(90, 90), TaperJobs.Arc(90, 90), 600, TaperPlacement.Flush, default), new()).Checks,
            check => check.Id == "form-width");

    // Folds some 14 mm apart, read on a tape that steps 50 mm.
    [Theory]
    [InlineData(0.5, Verdict.Pass)]
    [InlineData(50, Verdict.Fail)]
    public void Two_folds_on_one_mark_cannot_be_folded(double step, Verdict expected)
    {
        var plan = Workshop.Plan(Arc, marks: new(Datum.Edge, new Tape(LengthUnit.Mm, step)));
        var check = Workshop.CheckOf(plan, "marks-apart");
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(expected == Verdict.Fail, plan.Form.Stations.Select(station => station.MarkText).Distinct().Count() < plan.Form.Stations.Count);
    }

    [Fact]
    public void Marks_are_apart_just_where_they_all_read_differently() =>
        Gen.Select(RandomJobs.Plain, Gen.Double[0.1, 60], Gen.Enum<Datum>()).ForAll(
            (job, step, datum) =>
            {
                var plan = (job with { Marks = new(datum, new Tape(LengthUnit.Mm, step)) }).Plan();
                var distinct = plan.Form.Stations.Select(station => station.MarkMm).Distinct().Count();
                Assert.Equal(distinct == plan.Form.Stations.Count, Workshop.CheckOf(plan, "marks-apart").Verdict == Verdict.Pass);
            },
            iter: 60);

    // n = 0.1: eps0 = n at K = 145/0.1^0.1 = 145/0.794328 = 182.544 MPa.
    [Theory]
    [InlineData(120, Verdict.Warn)]
    [InlineData(182, Verdict.Warn)]
    [InlineData(183, Verdict.Pass)]
    [InlineData(250, Verdict.Pass)]
    public void A_strength_coefficient_below_what_the_yield_implies_is_named(double k, Verdict expected)
    {
        var own = Workshop.Hardening(69000, 0.33, 145, 0.1, k);
        var check = Workshop.CheckOf(Workshop.Plan(Arc with { Sheet = new(own, 1.5) }), "strength-coefficient");
        Assert.Equal(expected, check.Verdict);
        Assert.Equal(k, check.Value);
        Workshop.Near(182.544, check.Limit!.Value, 1e-5);
    }

    [Fact]
    public void The_catalogues_own_figures_need_no_such_check() =>
        Assert.DoesNotContain(Workshop.Plan(Arc).Checks, check => check.Id == "strength-coefficient");

    private static FormPlan? Planned(Job job)
    {
        try
        {
            return job.Plan();
        }
        catch (NoSolutionException)
        {
            return null;
        }
    }
}
