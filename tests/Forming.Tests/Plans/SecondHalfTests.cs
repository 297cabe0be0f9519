using CsCheck;
using Forming.Checks;
using Forming.Jobs;
using Forming.Plans.Drafts;

namespace Forming.Tests.Plans;

/// <summary>The finished half of a mirrored panel swings with the free side while the second half is pulled.</summary>
public class SecondHalfTests
{
    private const double Gravity = 9.80665;

    private static readonly PanelSpec Arc = Workshop.Panel(Workshop.Arc(90, 90)) with { LeverMm = 100, LeadOutMm = 400, Mirrored = true };

    // Mid radius r = 90.75: the quarter arc and the lead-in of 80 are 222.55 mm long, their centre (r² + 80 r)/222.55 past the tangent line;
    // 300 wide, 1.5 thick. Over the first fold all of the curve and the flat of 400 lie between.
    [Fact]
    public void The_finished_half_weighs_on_the_first_fold_the_most()
    {
        var half = HalfOf(Arc);
        const double r = 90.75;
        var length = (r * Math.PI / 2) + 80;
        var density = Workshop.Of("al-3003-h14").DensityKgPerCubicMetre;
        var mass = length * 300 * 1.5 * density * 1e-9;
        Workshop.Near(mass, half.MassKg, 1e-3);
        Workshop.Near(mass * Gravity * ((r * Math.PI / 2) + 400 + (((r * r) + (80 * r)) / length)), half.WeightMomentNmm, 1e-3);
    }

    // A light half changes little; at the end of the wrap it stands above the fold and weighs on nobody.
    [Fact]
    public void The_second_pull_is_never_lighter_than_the_first() =>
        RandomJobs.Plain.ForAll(
            job =>
            {
                var plan = (job with { Panel = job.Panel with { Mirrored = true, LeadOutMm = 200 } }).Plan();
                Assert.True(Workshop.CheckOf(plan, "second-half-pull").Value >= plan.Panel.Pull.ForceN * (1 - 1e-6));
            },
            iter: 40);

    // 70 mm of lever in place of 100: M/L at the end of the wrap, where the weight no longer counts, is 100/70 times as large.
    [Fact]
    public void The_second_pull_has_at_most_the_flat_between_the_curves_for_a_lever()
    {
        var plan = Workshop.Plan(Arc with { LeadOutMm = 70 }, Workshop.Form() with { LeadOutMm = 20 });
        Workshop.Near(100.0 / 70 * plan.Panel.Pull.ForceN, Workshop.CheckOf(plan, "second-half-pull").Value!.Value, 0.01);
    }

    [Fact]
    public void A_long_heavy_half_takes_more_than_one_person()
    {
        var light = Workshop.Plan(Arc with { LeverMm = 200 });
        var heavy = Workshop.Plan(Arc with { LeverMm = 200, LeadInMm = 4000, LeadOutMm = 3000 });
        Assert.Equal(light.Panel.Pull.ForceN, heavy.Panel.Pull.ForceN);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(light, "second-half-pull").Verdict);
        Assert.Equal(Verdict.Warn, Workshop.CheckOf(heavy, "second-half-pull").Verdict);
        Assert.Contains(heavy.Safety, note => note.Id == "pull-force");
    }

    // The finished curve begins a flat's length past the end of the curve, some 60 mm past the end of the form's lead-out.
    [Fact]
    public void The_finished_half_clears_the_forms_lead_out_by_what_the_flat_is_longer()
    {
        var plan = Workshop.Plan(Arc with { LeadOutMm = 100 }, Workshop.Form() with { LeadOutMm = 40 });
        var turn = plan.Form.Sweep.Radians;
        var start = plan.Form.Section.ContactCurve[^1] + (100 * Point.Along(turn));
        var check = Workshop.CheckOf(plan, "second-half-clearance");
        Workshop.Near((start - plan.Form.Section.Vertices[^1]).Length, check.Value!.Value, 0.01);
        Assert.Equal(Verdict.Pass, check.Verdict);
    }

    [Fact]
    public void A_form_with_a_longer_lead_out_than_the_flat_between_the_curves_strikes_the_finished_half()
    {
        var check = Workshop.CheckOf(Workshop.Plan(Arc with { LeadOutMm = 100 }, Workshop.Form() with { LeadOutMm = 160 }), "second-half-clearance");
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Equal(0, check.Value);
    }

    // 130° and again 130°: the finished half's lead-in of 400 mm heads down to the bench behind the form.
    [Fact]
    public void A_half_that_comes_round_onto_the_bench_cannot_be_pulled_down()
    {
        var round = Arc with { Curve = Workshop.Arc(60, 130), LeadOutMm = 150 };
        var form = Workshop.Form() with { LeadOutMm = 40 };
        Assert.Equal(Verdict.Fail, Workshop.CheckOf(Workshop.Plan(round with { LeadInMm = 400 }, form), "second-half-clearance").Verdict);
        Assert.NotEqual(Verdict.Fail, Workshop.CheckOf(Workshop.Plan(round with { LeadInMm = 40 }, form), "second-half-clearance").Verdict);
    }

    [Fact]
    public void A_shorter_lead_out_on_the_form_never_brings_the_finished_half_nearer() =>
        Gen.Select(RandomJobs.Plain, Gen.Double[30, 300], Gen.Double[10, 150], Gen.Double[0.2, 1]).ForAll(
            (job, flat, leadOut, share) =>
            {
                double Clearance(double length) => Workshop.CheckOf(
                    (job with { Panel = job.Panel with { Mirrored = true, LeadOutMm = flat }, Form = job.Form with { LeadOutMm = length } }).Plan(),
                    "second-half-clearance").Value!.Value;
                Assert.True(Clearance(share * leadOut) >= Clearance(leadOut) - 1e-9);
            },
            iter: 40);

    [Fact]
    public void A_panel_of_one_curve_has_no_second_half() =>
        Assert.DoesNotContain(Workshop.Plan(Arc with { Mirrored = false }).Checks, check => check.Id.StartsWith("second-half", StringComparison.Ordinal));

    private static SecondHalf HalfOf(PanelSpec panel)
    {
        var form = Workshop.Form();
        return StraightPlanner.Draft(
            new(panel, form, Workshop.Brake, Workshop.Marks), new(form.FoldRadiusMm, form.Sheet.ThicknessMm, 0.4), null, null, default).SecondHalf!;
    }
}
