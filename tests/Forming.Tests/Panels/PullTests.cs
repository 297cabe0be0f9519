using Forming.Checks;
using Forming.Curves;
using Forming.Jobs;
using Forming.Materials;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Panels;

/// <summary>What it takes to pull a panel, and what the form bears.</summary>
public class PullTests
{
    private static readonly Sheet Panel = new(Workshop.Of("al-3003-h14"), 1.5);
    private static readonly PanelSpec Arc = Workshop.Panel(Workshop.Arc(90, 90)) with { LeverMm = 100, WidthMm = 400 };

    /// <summary>The panel's state on the form of an inside radius of 90 mm.</summary>
    private static readonly BentState Bent = BendingLaw.Of(Panel).LoadedFor(1 / 90.75);

    // Largest at the end of the wrap: 1.02 M/L over the whole width.
    [Fact]
    public void The_hand_force_of_an_arc_is_1_02_M_over_L()
    {
        var pull = Workshop.Plan(Arc).Panel.Pull;
        Workshop.Near(Bent.MomentPerWidth, pull.MomentPerWidth, 1e-12);
        Workshop.Near(1.02 * Bent.MomentPerWidth * 400 / 100, pull.ForceN, 1e-12);
        Assert.Equal(100, pull.LeverMm);
    }

    [Fact]
    public void The_clamp_holds_one_and_a_half_times_M_over_its_distance()
    {
        var pull = Workshop.Plan(Arc with { Clamp = new(30, 40, 25) }).Panel.Pull;
        Workshop.Near(1.5 * Bent.MomentPerWidth * 400 / 30, pull.ClampLoadN, 1e-12);
    }

    // M²/(2E'I) along the arc, and along the lever, where M falls evenly to nothing, a third of that per length.
    [Fact]
    public void The_energy_let_go_is_that_of_the_bent_arc_and_of_the_lever()
    {
        var law = BendingLaw.Of(Panel);
        var perLength = Bent.MomentPerWidth * Bent.MomentPerWidth / (2 * law.Stiffness);
        var expected = perLength * ((90.75 * Math.PI / 2) + (100.0 / 3)) * 400 / 1000;
        Workshop.Near(expected, Workshop.Plan(Arc).Panel.Pull.EnergyReleasedJ, 1e-12);
    }

    [Fact]
    public void The_longest_lever_is_0_8_over_the_curvature_less_work_over_moment_less_the_arc_still_to_wrap()
    {
        var longest = (0.8 / (Bent.Curvature - (Bent.WorkPerArea / Bent.MomentPerWidth))) - (90.75 * Math.PI / 2);
        Workshop.Near(longest, Workshop.Plan(Arc).Panel.Pull.LongestLeverMm!.Value, 1e-10);
    }

    [Fact]
    public void A_tight_place_far_along_the_curve_asks_for_more_than_the_first_fold()
    {
        var closing = Workshop.Plan(Arc with { Curve = Workshop.Progressive(200, 60, 90, ProgressiveLaw.Clothoid) }).Panel.Pull;
        var tightest = BendingLaw.Of(Panel).LoadedFor(1 / 60.75);
        Workshop.Near(tightest.MomentPerWidth, closing.MomentPerWidth, 1e-10);
        Workshop.Near(1.02 * tightest.MomentPerWidth * 400 / 100, closing.ForceN, 1e-10);
    }

    [Theory]
    [InlineData(100, Verdict.Pass)]
    [InlineData(3000, Verdict.Warn)]
    public void A_pull_past_one_persons_is_flagged(double width, Verdict expected)
    {
        var plan = Workshop.Plan(Arc with { WidthMm = width }, Workshop.Form() with { WidthMm = 300 });
        Assert.Equal(expected, Workshop.CheckOf(plan, "hand-force").Verdict);
        Assert.Equal(expected == Verdict.Warn, plan.Safety.Any(note => note.Id == "pull-force"));
        Assert.Equal(expected, Workshop.CheckOf(plan, "panel-width").Verdict);
    }

    // 1.5 mm pulls about 0.5 N a mm of width at a lever of 100; one person pulls 225 N, and six find room along an edge.
    [Theory]
    [InlineData(1000, false)]
    [InlineData(6000, true)]
    public void A_pull_past_any_crew_asks_for_a_winch_with_nobody_in_line(double width, bool winch)
    {
        var plan = Workshop.Plan(Arc with { WidthMm = width }, Workshop.Form() with { WidthMm = 300 });
        Assert.Equal(winch, plan.Panel.Pull.ForceN > 6 * 225);
        Assert.Equal(winch, plan.Safety.Any(note => note.Id == "cable-recoil"));
        var force = plan.Safety.Single(note => note.Id == "pull-force").Text.Format;
        Assert.Equal(winch, force.Contains("too much for any crew", StringComparison.Ordinal));
        Assert.Equal(!winch, force.Contains("people", StringComparison.Ordinal));
    }

    // About 1 N a mm of width at a lever of 100: 750 mm take four people.
    [Fact]
    public void What_pulls_and_lifts_is_named_where_it_is_too_little_and_not_where_it_is_enough()
    {
        var wide = Arc with { WidthMm = 750 };
        var force = Workshop.Plan(wide).Panel.Pull.ForceN;
        Assert.InRange(force, 2 * 225, 4 * 225);
        Assert.Contains("one standing person", Pull(PullBy.OnePerson)!.Text.Format, StringComparison.Ordinal);
        Assert.Contains("2 standing people", FormattableString.Invariant(Pull(new(2))!.Text), StringComparison.Ordinal);
        Assert.Null(Pull(new(4)));
        Assert.Equal(SafetyLevel.Danger, Pull(new(1, 0.99 * force))!.Level);
        Assert.Null(Pull(new(1, 1.01 * force)));

        // 31 kg: too much for one, little for two; under a hoist nobody stands whatever it is rated for.
        Assert.NotNull(Lift(PullBy.OnePerson));
        Assert.Null(Lift(new(2)));
        Assert.Equal(SafetyLevel.Warning, Lift(new(1, 1000))!.Level);
        Assert.Equal(SafetyLevel.Danger, Lift(new(1, 200))!.Level);

        SafetyNote? Pull(PullBy by) => Workshop.Plan(wide with { PullBy = by }).Safety.SingleOrDefault(note => note.Id == "pull-force");

        SafetyNote? Lift(PullBy by) => Workshop.Plan(
            Arc with { Curve = Workshop.Arc(300, 90), Sheet = new(Workshop.Of("al-3003-h14"), 8), WidthMm = 2000, PullBy = by }, Workshop.Form() with { WidthMm = 100 })
            .Safety.SingleOrDefault(note => note.Id == "lift-mass");
    }

    // 23 kg a person, and no more than four at one blank: 31 kg and 153 kg.
    [Theory]
    [InlineData(8, 2000, false)]
    [InlineData(20, 4000, true)]
    public void A_blank_past_any_crew_asks_for_a_hoist(double thickness, double width, bool hoist)
    {
        var plan = Workshop.Plan(
            Arc with { Curve = Workshop.Arc(300, 90), Sheet = new(Workshop.Of("al-3003-h14"), thickness), WidthMm = width }, Workshop.Form() with { WidthMm = 100 });
        Assert.Equal(hoist, plan.Panel.Blank.MassKg > 4 * 23);
        var text = plan.Safety.Single(note => note.Id == "lift-mass").Text.Format;
        Assert.Equal(hoist, text.Contains("hoist", StringComparison.Ordinal));
        Assert.Equal(!hoist, text.Contains("people", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(300, false)]
    [InlineData(1500, true)]
    public void A_clamp_that_holds_much_can_slip(double width, bool expected)
    {
        var plan = Workshop.Plan(Arc with { WidthMm = width });
        Assert.Equal(expected, plan.Panel.Pull.ClampLoadN > 5000);
        Assert.Equal(expected, plan.Safety.Any(note => note.Id == "clamp-slip"));
    }

    // An arc of contact radius R turned Phi, with the hand's force F = M w/L square to the panel's end, which stands D = L (k - W/M)
    // further round: the arm at a section that has turned x is L + R (sin(Phi + D - x) - sin D), so the form's share is
    // F R (sin(Phi + D - x) - sin D), here nowhere below 0, and its rotation (Rm/(E'I wf)) F R (cos D - cos(Phi + D) - Phi sin D),
    // Rm the radius of the panel's mid surface.
    [Fact]
    public void The_form_turns_by_the_moment_that_the_panel_does_not_carry()
    {
        var plan = Workshop.Plan(Arc, Workshop.Form() with { WidthMm = 380 });
        var form = BendingLaw.Of(Workshop.Form().Sheet);
        double middle = 1 / Bent.Curvature, contact = middle - 0.75, turn = plan.Form.Sweep.Radians;
        var force = Bent.MomentPerWidth * 400 / 100;
        var further = 100 * (Bent.Curvature - (Bent.WorkPerArea / Bent.MomentPerWidth));
        Assert.InRange(turn + further, Math.PI / 2, Math.PI - further);
        var rotation = middle / (form.Stiffness * 380)
            * force * contact * (Math.Cos(further) - Math.Cos(turn + further) - (turn * Math.Sin(further)));
        Workshop.Near(rotation, plan.Form.Give.Rotation.Radians, 0.01);

        var largest = force * contact * (1 - Math.Sin(further)) / 380;
        Workshop.Near(largest, plan.Form.Give.MomentPerWidth, 0.01);
        Workshop.Near(2 / Math.Sqrt(3) * Workshop.Of("steel-cr-cs").YieldMpa * 4 / 6, plan.Form.Give.FirstYieldPerWidth, 1e-12);
    }

    [Fact]
    public void A_thicker_form_gives_less_by_the_cube_of_its_thickness()
    {
        double Rotation(double thickness) => Workshop.Plan(
            Arc with { Springback = new MeasuredFactor(0.7) }, Workshop.Form() with { Sheet = new(Workshop.Of("steel-cr-cs"), thickness) })
            .Form.Give.Rotation.Radians;
        Workshop.Near(8, Rotation(1) / Rotation(2), 1e-9);
    }

    [Fact]
    public void A_form_that_gives_more_than_the_stop_can_set_warns()
    {
        var weak = Workshop.PlanWithRemedies(Arc with { Sheet = new(Workshop.Of("ss-304"), 3) }, Workshop.Form() with { Sheet = new(Workshop.Of("steel-cr-cs"), 0.8) });
        Assert.Equal(Verdict.Warn, Workshop.CheckOf(weak, "form-give").Verdict);
        Assert.Equal(Verdict.Fail, Workshop.CheckOf(weak, "form-yield").Verdict);
        Assert.Contains("ribs", Workshop.CheckOf(weak, "form-give").Remedy!.Text.Format, StringComparison.Ordinal);
    }
}
