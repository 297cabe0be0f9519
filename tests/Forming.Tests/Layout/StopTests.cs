using CsCheck;
using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Layout;

/// <summary>Where the brake's stop is set.</summary>
public class StopTests
{
    private static readonly PanelSpec Panel = Workshop.Panel(Workshop.Arc(90, 90));

    // Perfectly plastic 200 MPa steel of 2 mm, r = 2 mm: k_i = 1/3, k_f = k_i - M/E'I; M/E'I = 1.5 ky (1 - (ky/k_i)²/3).
    [Fact]
    public void A_stop_is_set_past_the_fold_by_its_springback_and_the_spring_of_the_leaf()
    {
        var steel = new Sheet(Workshop.Perfect(207e3, 0.29, 200), 2);
        var plane = 207e3 / (1 - (0.29 * 0.29));
        var yieldCurvature = 2 * (2 / Math.Sqrt(3) * 200) / (plane * 2);
        var elastic = 1.5 * yieldCurvature * (1 - (9 * yieldCurvature * yieldCurvature / 3));
        var slope = 1 / 3.0 / ((1 / 3.0) - elastic);

        var stop = FoldSpringback.Estimate(new FoldShape(2, 2, 0.4), BendingLaw.Of(steel), 12).StopAngle(new(0.2))!.Value;
        Workshop.Near((0.2 * slope) + (elastic * 12 / 3), stop.Radians, 1e-12);
    }

    [Fact]
    public void A_small_fold_springs_back_by_a_larger_share()
    {
        var springback = FoldSpringback.Estimate(new FoldShape(2, 2, 0.4), BendingLaw.Of(Workshop.Form().Sheet), 12);
        double Share(double degrees) => springback.StopAngle(Angle.FromDegrees(degrees))!.Value.Degrees / degrees;
        Assert.True(Share(3) > Share(15));
        Assert.True(Share(15) > 1);
    }

    [Fact]
    public void What_test_strips_taught_wins()
    {
        var taught = new StopLine(Angle.FromDegrees(1.5), 1.04);
        var plan = Workshop.Plan(Panel, Workshop.Form() with { Stop = taught });
        Assert.All(plan.Form.Stations, station => Workshop.Within(1e-12, 1.5 + (1.04 * station.FoldAngle.Degrees), station.StopAngle!.Value.Degrees));
        Assert.Equal(Status.Caller, plan.Basis.Single(basis => basis.Quantity == "form.stations.stopAngle").Status);
    }

    [Fact]
    public void A_fold_too_round_to_yield_has_no_stop_angle_and_fails()
    {
        var spring = Workshop.Form() with { Sheet = new(Workshop.Perfect(200e3, 0.3, 2000), 0.3), FoldRadiusMm = 20 };
        var plan = Workshop.Plan(Panel, spring);
        Assert.All(plan.Form.Stations, station => Assert.Null(station.StopAngle));
        Assert.Equal(Verdict.Fail, Workshop.CheckOf(plan, "fold-radius").Verdict);
    }

    [Fact]
    public void Equal_angles_on_an_arc_need_two_stop_settings_with_half_ends_and_one_with_full()
    {
        var half = Workshop.Plan(Panel, Workshop.Form(new() { Folds = 13 })).Form;
        Assert.Equal(2, half.StopSettings.Count);
        Assert.Equal([1, 13], half.StopSettings[0].Stations);

        var full = Workshop.Plan(Panel, Workshop.Form(new() { Folds = 13, Ends = SteppingEnds.Full })).Form;
        Assert.Single(full.StopSettings);
    }

    [Fact]
    public void Stop_settings_serve_every_fold_once_within_the_stops_resolution_and_still_add_up()
    {
        var panel = Workshop.Panel(Workshop.Progressive(60, 240, 90, ProgressiveLaw.Involute));
        var form = Workshop.Plan(panel, Workshop.Form(new() { Rule = SteppingRule.FewestFolds })).Form;
        Assert.Equal(Enumerable.Range(1, form.Stations.Count), form.StopSettings.SelectMany(setting => setting.Stations).Order());
        foreach (var setting in form.StopSettings)
        {
            var angles = setting.Stations.Select(number => form.Stations[number - 1].FoldAngle.Degrees).ToArray();
            Assert.InRange(angles.Max() - angles.Min(), 0, Workshop.Brake.StopResolution.Degrees + 1e-12);
        }

        Workshop.Within(1e-12, form.Sweep.Radians, form.StopSettings.Sum(setting => setting.FoldAngle.Radians * setting.Stations.Count));
    }

    // Thirteen folds of 7.2° on a stop of half degrees: each is set to 7 and the form ends 2.6° open; along the form the sum comes out within a quarter degree.
    [Fact]
    public void Rounding_each_fold_adds_up_and_rounding_along_the_form_does_not()
    {
        double[] folds = [.. Enumerable.Repeat(7.2 * Workshop.Degree, 13)];
        var half = 0.5 * Workshop.Degree;
        var each = StopSettings.Steps(folds, folds, half, StopRounding.Each);
        Assert.All(each, steps => Assert.Equal(14, steps));
        Workshop.Within(1e-9, -2.6, StopSettings.Closing(folds, each.Select(steps => steps * half), 1).Degrees);
        var sum = StopSettings.Steps(folds, folds, half, StopRounding.Sum);
        Assert.Equal([14, 15], sum.Distinct().Order());
        Assert.InRange(Math.Abs(StopSettings.Closing(folds, sum.Select(steps => steps * half), 1).Degrees), 0, 0.25 + 1e-9);
    }

    [Fact]
    public void Along_any_form_the_sum_of_the_settings_comes_within_half_a_step_and_every_one_within_a_step()
    {
        Gen.Select(Gen.Double[4, 40].Array[1, 60], Gen.Double[0.1, 2], Gen.Double[0, 3], Gen.Double[0.9, 1.3]).ForAll(
            (degrees, resolution, offset, slope) =>
            {
                double[] folds = [.. degrees.Select(angle => angle * Workshop.Degree)];
                double[] stops = [.. folds.Select(fold => (offset * Workshop.Degree) + (slope * fold))];
                var step = resolution * Workshop.Degree;
                double[] settings = [.. StopSettings.Steps(folds, stops, step, StopRounding.Sum).Select(steps => steps * step)];
                Assert.InRange(Math.Abs(StopSettings.Closing(stops, settings, slope).Radians) * slope, 0, (step / 2) + 1e-8);
                Assert.All(settings.Zip(stops), pair => Assert.InRange(Math.Abs(pair.First - pair.Second), 0, step + 1e-8));
            },
            iter: 300);
    }

    [Fact]
    public void A_group_has_one_setting_and_its_stations_have_it_too_unless_the_sum_is_asked_for()
    {
        var panel = Workshop.Panel(Workshop.Progressive(60, 240, 90, ProgressiveLaw.Involute));
        foreach (var rounding in new[] { StopRounding.Each, StopRounding.Sum })
        {
            var form = Workshop.Plan(panel, Workshop.Form(new() { Rule = SteppingRule.FewestFolds }) with { StopRounding = rounding, Stop = new(Angle.FromDegrees(1), 1.25) }).Form;
            foreach (var setting in form.StopSettings)
                Assert.All(setting.Stations, number => Assert.Equal(setting.Setting, form.Stations[number - 1].StopSetting));
            Workshop.Within(1e-12, form.Stations.Sum(station => (station.StopSetting!.Value - station.StopAngle!.Value).Radians) / 1.25, form.StopRounding!.Value.Radians);
            if (rounding == StopRounding.Sum)
                Assert.InRange(Math.Abs(form.StopRounding.Value.Degrees) * 1.25, 0, (Workshop.Brake.StopResolution.Degrees / 2) + 1e-6);
        }
    }

    [Fact]
    public void A_die_opening_sets_the_reach_to_half_of_itself()
    {
        var press = Workshop.Brake with { Kind = BrakeKind.Press, DieOpeningMm = 16 };
        var byDie = Workshop.Plan(Panel, brake: press).Form.Stations[3].StopAngle;
        var byReach = Workshop.Plan(Panel, brake: press with { ReachMm = 8 }).Form.Stations[3].StopAngle;
        Assert.Equal(byReach, byDie);
    }

    [Fact]
    public void A_stop_past_half_a_turn_cannot_be_made_for_no_brake_swings_that_far()
    {
        var most = Angle.FromDegrees(179.9);
        var plan = Workshop.PlanWithRemedies(Panel, Workshop.Form() with { Stop = new(most, 1) });
        Assert.Equal(PlanVerdict.CannotBeMade, plan.Verdict);
        var check = Workshop.CheckOf(plan, "stop-angle");
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Equal(plan.Form.Stations.Max(station => station.StopAngle!.Value.Radians), check.Value);
        Assert.NotNull(check.Remedy);
    }

    [Fact]
    public void An_ordinary_form_is_within_the_swing_of_its_brake() =>
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(Workshop.Plan(Panel), "stop-angle").Verdict);

    // A leaf said to bear ten metres out bends the sheet elastically so far that its stop passes half a turn.
    [Fact]
    public void An_absurd_reach_fails_the_plan() =>
        Assert.Equal(Verdict.Fail, Workshop.CheckOf(Workshop.Plan(Panel, brake: Workshop.Brake with { ReachMm = 10_000 }), "stop-angle").Verdict);
}
