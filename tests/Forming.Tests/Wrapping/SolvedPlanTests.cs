using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans;
using Forming.Pulling;
using Forming.Springback;
using Xunit.Abstractions;

namespace Forming.Tests.Wrapping;

/// <summary>What comes off plans that are solved on the simulated pull.</summary>
public class SolvedPlanTests(ITestOutputHelper output)
{
    private const double Springy = 0.6;

    // Up to this springback over the whole curve a panel can be pulled over its form, bare or ribbed [degrees].
    private const double Followed = 110;

    private static readonly PanelSpec Steel = Workshop.Panel(Workshop.Arc(100, 90)) with
    {
        Sheet = new(Workshop.Of("steel-cr-cs"), 1),
        Finish = Finish.Hidden,
        Springback = new SolvedOnWrap(),
    };

    [Fact]
    [Trait("Category", "Long")]
    public void Of_twenty_panels_at_most_two_come_off_otherwise() => Hold(SolvedJobs.From(5, Springy, 1, leastFolds: 6).Take(20), 0.25, 0.0015, 0.01, mostMissed: 2);

    [Fact]
    [Trait("Category", "Long")]
    public void A_panel_that_springs_back_far_comes_off_nearly_as_wanted() =>
        Hold(SolvedJobs.From(5, 0.3, Springy, 8, (springback, _) => springback < Followed).Take(8), 0.4, 0.0025, 0.04, mostMissed: 0);

    [Fact]
    public void A_panel_that_springs_back_by_more_than_a_third_of_a_turn_is_pulled_over_no_form() => Refuse(5, 8);

    [Theory]
    [Trait("Category", "Slow")]
    [InlineData(1)]
    [InlineData(2)]
    public void Of_two_hundred_panels_at_most_ten_come_off_otherwise(int seed) =>
        Hold(SolvedJobs.From(seed, Springy, 1, leastFolds: 6).Take(200), 0.25, 0.0015, 0.01, mostMissed: 10);

    [Theory]
    [Trait("Category", "Slow")]
    [InlineData(1)]
    [InlineData(2)]
    public void Of_two_hundred_panels_that_spring_back_far_at_most_five_come_off_otherwise(int seed) =>
        Hold(SolvedJobs.From(seed, 0.3, Springy, 8, (springback, _) => springback < Followed).Take(200), 0.4, 0.0025, 0.04, mostMissed: 5);

    [Theory]
    [Trait("Category", "Slow")]
    [InlineData(1)]
    public void Of_two_hundred_panels_that_spring_back_too_far_none_is_planned_as_if_it_could_be_pulled(int seed) => Refuse(seed, 200);

    // Between the two it depends on the form's give and on the lever.
    [Theory]
    [Trait("Category", "Slow")]
    [InlineData(1)]
    public void Where_springback_nears_the_most_that_can_be_pulled_two_panels_in_five_come_off_nearly_as_wanted(int seed) =>
        Hold(
            SolvedJobs.From(seed, 0.3, Springy, 8, (springback, sweep) => springback > Followed && springback < Most(sweep)).Take(50),
            0.4,
            0.0025,
            0.04,
            mostMissed: 30);

    private static double Most(double formSweep) => Lever.MostSpringback(formSweep * Workshop.Degree) / Workshop.Degree;

    private static void Refuse(int seed, int count)
    {
        foreach (var job in SolvedJobs.From(seed, 0.3, Springy, 2, (springback, sweep) => springback > Most(sweep) + 1).Take(count))
        {
            Assert.NotEqual(PlanVerdict.Ready, job.Plan.Verdict);
            var prediction = job.Plan.Panel.Prediction!;
            Assert.False(prediction.Wraps, $"{job.Panel.Curve}, factor {job.Factor}, touches {prediction.FoldsReached} of {prediction.Folds}");
            Assert.False(prediction.GaveUp);
            Assert.Contains("no lever pulls this panel over a form", prediction.WhyNot!.Format, StringComparison.Ordinal);
            Assert.Equal(Verdict.Warn, Workshop.CheckOf(job.Plan, "wrap-order").Verdict);
        }
    }

    private void Hold(IEnumerable<SolvedJob> jobs, double leastMm, double share, double radiusShare, int mostMissed)
    {
        var missed = 0;
        foreach (var job in jobs)
        {
            var inner = job.Plan.Form.Stations.Skip(1).SkipLast(1).Select(station => station.FoldAngle.Radians).ToArray();
            if (job.Plan.Panel.Prediction is { Wraps: true })
                Assert.All(inner, angle => Workshop.Near(inner[0], angle, 1e-9));
            if (job.Misses(leastMm, share, radiusShare) is not { } miss)
                continue;
            output.WriteLine(miss);
            missed++;
            // What misses by more than the tolerance is never called ready.
            if (job.ComesOff() is not { } shape || !shape.Meets(FinishedTolerance.Default))
                Assert.NotEqual(PlanVerdict.Ready, job.Plan.Verdict);
        }

        output.WriteLine($"{missed} missed");
        Assert.True(missed <= mostMissed, $"{missed} missed");
    }

    [Theory]
    [InlineData(8, SteppingEnds.Half)]
    [InlineData(11.5, SteppingEnds.Half)]
    [InlineData(15, SteppingEnds.Half)]
    [InlineData(44, SteppingEnds.Half)]
    [InlineData(10, SteppingEnds.Full)]
    public void A_fixed_angle_stands_and_the_spacing_takes_up_the_correction(double degrees, SteppingEnds ends)
    {
        var plan = Workshop.Plan(Steel, Workshop.Form(new() { FoldAngle = Angle.FromDegrees(degrees), Ends = ends }) with { Backing = FormBacking.Ribs });
        Assert.All(plan.Form.Stations.Skip(1).SkipLast(1), station => Workshop.Within(1e-9, degrees, station.FoldAngle.Degrees));
        Workshop.Within(0.05, 90, plan.Panel.Prediction!.Shape!.Sweep.Degrees);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "sweep-match").Verdict);
        Assert.True(plan.Form.Stepping.SpacingSpreadMm > 0.1);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(18)]
    [InlineData(25)]
    public void A_fixed_spacing_stands_and_the_angles_take_up_the_correction(double spacing)
    {
        var stepping = new Stepping { Rule = SteppingRule.EqualSpacing, SpacingMm = spacing };
        var plan = Workshop.Plan(Steel, Workshop.Form(stepping) with { Backing = FormBacking.Ribs });
        Assert.All(
            plan.Form.Stations.Zip(plan.Form.Stations.Skip(1)),
            pair => Workshop.Within(Workshop.Marks.Tape.ResolutionMm, spacing, pair.Second.AtMm - pair.First.AtMm));
        Workshop.Within(0.05, 90, plan.Panel.Prediction!.Shape!.Sweep.Degrees);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "sweep-match").Verdict);
    }

    [Theory]
    [InlineData(50, SteppingEnds.Full)]
    [InlineData(35, SteppingEnds.Half)]
    public void A_fixed_step_stands_and_the_checks_say_how_far_the_panel_is_off(double degrees, SteppingEnds ends)
    {
        var brake = Workshop.Brake with { StopResolution = Angle.FromDegrees(1e-6) };
        var stepping = new Stepping { FoldAngle = Angle.FromDegrees(degrees), Ends = ends };
        var plan = Workshop.Plan(Steel, Workshop.Form(stepping) with { Backing = FormBacking.Ribs }, brake);
        var shape = plan.Panel.Prediction!.Shape!;
        var match = Workshop.CheckOf(plan, "sweep-match");
        Workshop.Within(1e-9, (shape.Sweep - shape.WantedSweep).Radians, plan.Form.Stepping.SweepOver.Radians);
        Workshop.Within(1e-9, Math.Abs(plan.Form.Stepping.SweepOver.Radians), match.Value!.Value);
        Assert.Equal(Verdict.Warn, match.Verdict);
        Assert.NotEqual(PlanVerdict.Ready, plan.Verdict);
    }

    // By the estimate no lever keeps this wrap in order; pulled in simulation, the panel lands on every fold one after another.
    [Fact]
    public void The_simulated_wrap_judges_the_lever_and_not_its_estimate()
    {
        var plan = Workshop.Plan(
            Steel with { Curve = Workshop.Arc(300, 90), Sheet = new(Workshop.Of("steel-cr-cs"), 0.9), Finish = Finish.Satin },
            Workshop.Form() with { Backing = FormBacking.Ribs });
        Assert.True(plan.Panel.Pull.LeverMm > plan.Panel.Pull.LongestLeverMm);
        Assert.True(plan.Panel.Prediction!.LandsInOrder);
        foreach (var id in (string[])["lever", "wrap-order", "facet-width", "finished-radius", "finished-shape", "finished-sweep"])
            Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, id).Verdict);
    }
}
