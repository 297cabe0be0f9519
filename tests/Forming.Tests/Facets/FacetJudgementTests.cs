using CsCheck;
using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans;
using Forming.Tests.Plans;

namespace Forming.Tests.Facets;

/// <summary>What a plan says of its facets: smooth, showing or not known.</summary>
public class FacetJudgementTests
{
    private static readonly PanelSpec Panel = Workshop.Panel(Workshop.Arc(60, 90));

    [Theory]
    [InlineData(SteppingRule.EqualAngle)]
    [InlineData(SteppingRule.EqualSpacing)]
    [InlineData(SteppingRule.FewestFolds)]
    public void A_plan_left_to_choose_is_smooth_and_one_step_fewer_would_show(SteppingRule rule)
    {
        var plan = Workshop.Plan(Panel, Workshop.Form(new() { Rule = rule }));
        Assert.True(plan.Panel.PrintThrough.Known);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "facet-width").Verdict);

        var fewer = Workshop.Plan(Panel, Workshop.Form(new() { Rule = rule, Folds = plan.Form.Stations.Count - 1 }));
        Assert.Equal(Verdict.Warn, Workshop.CheckOf(fewer, "facet-width").Verdict);
    }

    [Fact]
    public void A_finer_finish_needs_more_folds()
    {
        int Folds(Finish finish) => Workshop.Plan(Panel with { Finish = finish }, brake: Workshop.Brake with { MinFacetMm = 1 }).Form.Stations.Count;
        Assert.True(Folds(Finish.Gloss) > Folds(Finish.Satin));
        Assert.True(Folds(Finish.Satin) > Folds(Finish.Hidden));
    }

    [Fact]
    public void A_lever_past_the_longest_makes_print_through_not_known_and_gives_no_number()
    {
        var longest = Workshop.Plan(Panel).Panel.Pull.LongestLeverMm!.Value;
        var inOrder = Workshop.Plan(Panel with { LeverMm = 0.99 * longest });
        Assert.True(inOrder.Panel.PrintThrough.Known);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(inOrder, "lever").Verdict);

        var past = Workshop.Plan(Panel with { LeverMm = 1.01 * longest });
        Assert.False(past.Panel.PrintThrough.Known);
        Assert.Contains("lever", past.Panel.PrintThrough.WhyUnknown, StringComparison.Ordinal);
        Assert.Null(past.Panel.PrintThrough.RippleMm);
        Assert.Null(past.Panel.PrintThrough.Slope);
        Assert.Null(past.Panel.PrintThrough.AllowedFacetMm);
        Assert.Equal(Verdict.Warn, Workshop.CheckOf(past, "lever").Verdict);
        Assert.Equal(Verdict.Warn, Workshop.CheckOf(past, "facet-width").Verdict);
        Assert.All(past.Form.Stations, station => Assert.True(station.FoldAngle.Radians > 0));
    }

    [Fact]
    public void Without_a_lead_out_there_is_no_lever_and_the_panel_cannot_be_pulled()
    {
        var plan = Workshop.PlanWithRemedies(Panel with { LeadOutMm = 0 });
        Assert.Equal(Verdict.Fail, Workshop.CheckOf(plan, "lever").Verdict);
        Assert.NotNull(Workshop.CheckOf(plan, "lever").Remedy);
        Assert.Equal(PlanVerdict.CannotBeMade, plan.Verdict);
        Assert.False(plan.Panel.PrintThrough.Known);
        Assert.NotEmpty(plan.Form.Stations);
    }

    [Fact]
    public void A_long_lead_out_is_pulled_no_further_out_than_keeps_the_wrap_in_order()
    {
        var plan = Workshop.Plan(Panel with { LeadOutMm = 2000 });
        var pull = plan.Panel.Pull;
        Assert.InRange(pull.LeverMm, Workshop.Brake.MinFacetMm, 250);
        Assert.True(pull.LeverMm < pull.LongestLeverMm);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "lever").Verdict);
    }

    [Fact]
    public void The_brakes_narrowest_facet_wins_and_the_check_says_what_would_be_smooth()
    {
        var plan = Workshop.PlanWithRemedies(Panel with { Finish = Finish.Gloss }, brake: Workshop.Brake with { MinFacetMm = 12 });
        Assert.All(plan.Form.Stations, station => Assert.True(station.FacetAfterMm >= 12));
        var check = Workshop.CheckOf(plan, "facet-width");
        Assert.Equal(Verdict.Warn, check.Verdict);
        Assert.NotNull(check.Remedy);
        Assert.Equal(PlanVerdict.Attention, plan.Verdict);
    }

    [Fact]
    public void The_callers_own_widest_facet_is_kept()
    {
        var plan = Workshop.Plan(Panel, Workshop.Form(new() { MaxFacetMm = 9 }));
        Assert.All(plan.Form.Stations.SkipLast(1), station => Assert.True(station.FacetAfterMm <= 9));
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "max-facet").Verdict);
    }

    [Fact]
    public void Full_ends_need_narrower_facets_than_half_ends()
    {
        var half = Workshop.Plan(Panel, Workshop.Form(new() { Ends = SteppingEnds.Half }));
        var full = Workshop.Plan(Panel, Workshop.Form(new() { Ends = SteppingEnds.Full }));
        Assert.True(full.Panel.PrintThrough.WidestFacetMm < half.Panel.PrintThrough.WidestFacetMm);
    }

    [Fact]
    public void More_folds_never_show_more() =>
        Gen.Select(
            Gen.Enum<SteppingRule>(), Gen.Enum<SteppingEnds>(), Gen.Double[40, 200], Gen.Double[1, 3], Gen.Double[30, 120], Gen.Int[5, 20], Gen.Int[1, 6],
            Gen.Double[30, 120])
            .ForAll(
                (rule, ends, radius, opening, sweep, folds, more, lever) =>
                {
                    var panel = Panel with
                    {
                        Curve = Workshop.Progressive(radius, radius * opening, sweep, ProgressiveLaw.Involute),
                        LeverMm = lever,
                    };
                    var few = Shown(panel, new() { Rule = rule, Ends = ends, Folds = folds });
                    var many = Shown(panel, new() { Rule = rule, Ends = ends, Folds = folds + more });
                    if (few is { } before && many is { } after)
                        Assert.True(after <= before * (1 + 1e-9), $"{before} -> {after} of the limit");
                },
                iter: 300);

    // Slope = 3 w/c of one facet: both belong to the facet that is shown.
    [Fact]
    public void Print_through_shows_one_facet_and_what_belongs_to_it() =>
        RandomJobs.Plain.ForAll(
            job =>
            {
                var plan = job.Plan();
                if (plan.Panel.PrintThrough is not { Known: true, NearestFacetMm: { } facet, AllowedFacetMm: { } allowed } shown)
                    return;
                Workshop.Near(3 * shown.RippleMm!.Value / facet, shown.Slope!.Value.Radians, 1e-12);
                Assert.Equal(facet <= allowed, ShareOf(shown) <= 1);
                Assert.InRange(facet, 0, shown.WidestFacetMm);
            },
            iter: 200);

    private static double? Shown(PanelSpec panel, Stepping stepping)
    {
        var printThrough = Workshop.Plan(panel, Workshop.Form(stepping)).Panel.PrintThrough;
        return printThrough.Known ? ShareOf(printThrough) : null;
    }

    private static double ShareOf(PrintThroughResult shown) =>
        Math.Max(shown.RippleMm!.Value / shown.Allowed.RippleMm, shown.Slope!.Value.Radians / shown.Allowed.Slope.Radians);
}
