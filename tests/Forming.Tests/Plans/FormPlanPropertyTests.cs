using CsCheck;
using Forming.Checks;
using Forming.Curves;
using Forming.Plans;
using Forming.Results;

namespace Forming.Tests.Plans;

/// <summary>What holds of every plan.</summary>
public class FormPlanPropertyTests
{
    [Fact]
    public void Any_job_gets_a_plan_of_finite_figures_or_a_reason_why_not() =>
        RandomJobs.Any.ForAll(
            job =>
            {
                FormPlan plan;
                try
                {
                    plan = job.Plan();
                }
                catch (NoSolutionException refused)
                {
                    Assert.Matches("^[a-z]+(-[a-z]+)*\\.[a-z]+(-[a-z]+)*$", refused.Code);
                    Assert.NotEmpty(refused.Subject);
                    Assert.All(Figures.Of(refused.Wording, refused.Code), figure => Assert.True(double.IsFinite(figure.Value), figure.Path));
                    return;
                }

                Assert.All(Figures.Of(plan), figure => Assert.True(double.IsFinite(figure.Value), figure.Path));
                Workshop.Within(1e-9, plan.Form.Sweep.Radians, plan.Form.Stations.Sum(station => station.FoldAngle.Radians));
                Assert.InRange(plan.Form.FoldBackMissMm, 0, 1e-6);
                Assert.All(plan.Form.Stations, station => Assert.True(station.FoldAngle.Radians > 0));
            },
            iter: 150);

    [Fact]
    [Trait("Category", "Long")]
    public void Every_check_of_any_job_that_does_not_pass_carries_a_remedy_or_says_that_there_is_none() =>
        RandomJobs.Any.ForAll(
            job =>
            {
                FormPlan plan;
                try
                {
                    plan = job.PlanWithRemedies();
                }
                catch (NoSolutionException)
                {
                    return;
                }

                Assert.All(plan.Checks, check => Assert.Equal(check.Verdict == Verdict.Pass, check.Remedy is null));
                Assert.All(plan.Checks.Where(check => check.Remedy is not null), check => Assert.NotEmpty(FormattableString.Invariant(check.Remedy!.Text)));
                Assert.All(Figures.Of(plan), figure => Assert.True(double.IsFinite(figure.Value), figure.Path));
            },
            iter: 20);

    [Fact]
    public void The_verdict_is_the_worst_of_the_checks() =>
        RandomJobs.Plain.ForAll(
            job =>
            {
                var plan = job.Plan();
                var worst = plan.Checks.Max(check => check.Verdict);
                Assert.Equal(worst switch { Verdict.Fail => PlanVerdict.CannotBeMade, Verdict.Warn => PlanVerdict.Attention, _ => PlanVerdict.Ready }, plan.Verdict);
            },
            iter: 50);

    [Fact]
    public void Looks_pull_and_a_little_give_warn_and_never_fail() =>
        RandomJobs.Plain.ForAll(
            job =>
            {
                string[] warnings = ["facet-width", "max-facet", "hand-force", "panel-width", "lift-mass", "form-give", "form-width", "pull-line", "second-half-pull", "clamp-access", "stop-resolution"];
                Assert.All(job.Plan().Checks.Where(check => warnings.Contains(check.Id)), check => Assert.NotEqual(Verdict.Fail, check.Verdict));
            },
            iter: 50);

    // Every length k times as long, the finish's height too; slopes, angles and strains stay: forces per width go with k, moments with k², energy with k³.
    [Fact]
    public void A_job_k_times_as_large_has_the_same_angles_and_k_times_the_lengths() =>
        Gen.Select(RandomJobs.Plain, Gen.Double[0.5, 3]).ForAll(
            (job, k) =>
            {
                var (small, large) = (job.Plan(), Scaled(job, k).Plan());
                for (var i = 0; i < small.Form.Stations.Count; i++)
                {
                    var (a, b) = (small.Form.Stations[i], large.Form.Stations[i]);
                    Workshop.Within(1e-7, a.FoldAngle.Radians, b.FoldAngle.Radians);
                    Workshop.Within(1e-6 * k, k * a.AtMm, b.AtMm);
                    Workshop.Near(a.StopAngle!.Value.Radians, b.StopAngle!.Value.Radians, 1e-5);
                }

                Workshop.Near(k * small.Form.Blank.LengthMm, large.Form.Blank.LengthMm, 1e-8);
                Workshop.Near(k * small.Panel.Blank.LengthMm, large.Panel.Blank.LengthMm, 1e-8);
                Workshop.Near(k * k * k * small.Panel.Blank.MassKg, large.Panel.Blank.MassKg, 1e-8);
                Workshop.Near(k * k * small.Panel.Pull.MomentPerWidth, large.Panel.Pull.MomentPerWidth, 1e-8);
                Workshop.Near(k * k * small.Panel.Pull.ForceN, large.Panel.Pull.ForceN, 1e-7);
                Workshop.Near(k * k * k * small.Panel.Pull.EnergyReleasedJ, large.Panel.Pull.EnergyReleasedJ, 1e-7);
                Workshop.Within(1e-6, small.Form.Give.Rotation.Radians, large.Form.Give.Rotation.Radians);
                Assert.Equal(small.Panel.PrintThrough.Known, large.Panel.PrintThrough.Known);
                if (small.Panel.PrintThrough is { Known: true, RippleMm: { } ripple })
                    Workshop.Within(1e-6 * k * ripple, k * ripple, large.Panel.PrintThrough.RippleMm!.Value);
            },
            iter: 80);

    [Fact]
    public void A_curve_given_on_another_face_is_the_same_panel() =>
        Gen.Select(Gen.Double[40, 200], Gen.Double[20, 170], Gen.Double[0.5, 3]).ForAll(
            (radius, sweep, thickness) =>
            {
                var inside = Workshop.Panel(Workshop.Arc(radius, sweep)) with { Sheet = new(Workshop.Of("al-3003-h14"), thickness), LeverMm = 50 };
                var outside = inside with { Curve = Workshop.Arc(radius + thickness, sweep), Surface = Surface.Outside };
                var (a, b) = (Workshop.Plan(inside), Workshop.Plan(outside));
                Workshop.Within(1e-9, a.Form.Blank.LengthMm, b.Form.Blank.LengthMm);
                Workshop.Within(1e-9, a.Panel.Blank.LengthMm, b.Panel.Blank.LengthMm);
                Assert.Equal(a.Form.Stations.Count, b.Form.Stations.Count);
            },
            iter: 50);

    [Fact]
    public void A_bend_split_in_two_is_the_same_bend() =>
        Gen.Select(Gen.Double[40, 200], Gen.Double[30, 170], Gen.Double[0.2, 0.8], Gen.Int[4, 20]).ForAll(
            (radius, sweep, share, folds) =>
            {
                var form = Workshop.Form(new() { Folds = folds });
                var whole = Workshop.Plan(Workshop.Panel(Workshop.Arc(radius, sweep)) with { LeverMm = 60 }, form);
                var chain = new SegmentsCurve([Workshop.Arc(radius, sweep * share), Workshop.Arc(radius, sweep * (1 - share))]);
                var split = Workshop.Plan(Workshop.Panel(chain) with { LeverMm = 60 }, form);
                for (var i = 0; i < folds; i++)
                    Workshop.Within(1e-7, whole.Form.Stations[i].AtMm, split.Form.Stations[i].AtMm);
            },
            iter: 50);

    [Fact]
    public void A_curve_worked_from_its_other_end_has_the_same_folds_backwards() =>
        Gen.Select(Gen.Double[50, 150], Gen.Double[0.5, 2], Gen.Double[30, 150], Gen.Enum<ProgressiveLaw>(), Gen.Int[4, 16]).ForAll(
            (radius, opening, sweep, law, folds) =>
            {
                var form = Workshop.Form(new() { Folds = folds });
                var there = Workshop.Plan(Workshop.Panel(Workshop.Progressive(radius, radius * opening, sweep, law)) with { LeverMm = 60 }, form);
                var back = Workshop.Plan(Workshop.Panel(Workshop.Progressive(radius * opening, radius, sweep, law)) with { LeverMm = 60 }, form);
                for (var i = 0; i < folds; i++)
                    Workshop.Within(1e-6, there.Form.Blank.LengthMm - there.Form.Stations[i].AtMm, back.Form.Stations[^(i + 1)].AtMm);
            },
            iter: 50);

    [Fact]
    public void Equal_jobs_get_equal_plans_to_the_last_digit()
    {
        var panel = Workshop.Panel(Workshop.Progressive(60, 180, 110, ProgressiveLaw.Clothoid));
        Assert.Equal(Figures.Of(Workshop.Plan(panel)), Figures.Of(Workshop.Plan(panel)));
    }

    private static Job Scaled(Job job, double k)
    {
        PanelCurve curve = job.Panel.Curve switch
        {
            ArcCurve arc => arc with { RadiusMm = k * arc.RadiusMm },
            ProgressiveCurve bend => bend with { StartRadiusMm = k * bend.StartRadiusMm, EndRadiusMm = k * bend.EndRadiusMm },
            _ => throw new NotSupportedException(),
        };
        return new(
            job.Panel with
            {
                Sheet = job.Panel.Sheet with { ThicknessMm = k * job.Panel.Sheet.ThicknessMm },
                Curve = curve,
                WidthMm = k * job.Panel.WidthMm,
                LeadInMm = k * job.Panel.LeadInMm,
                LeadOutMm = k * job.Panel.LeadOutMm,
                LeverMm = k * job.Panel.LeverMm,
                Clamp = new(k * job.Panel.Clamp.GapMm, k * job.Panel.Clamp.HeightMm, k * job.Panel.Clamp.DepthMm),
                Finish = job.Panel.Finish with { RippleMm = k * job.Panel.Finish.RippleMm },
            },
            job.Form with
            {
                Sheet = job.Form.Sheet with { ThicknessMm = k * job.Form.Sheet.ThicknessMm },
                FoldRadiusMm = k * job.Form.FoldRadiusMm,
                LeadInMm = k * job.Form.LeadInMm,
                LeadOutMm = k * job.Form.LeadOutMm,
                WidthMm = k * job.Form.WidthMm,
            },
            job.Brake with { MinFacetMm = k * job.Brake.MinFacetMm, LengthMm = k * job.Brake.LengthMm, ReachMm = k * 12 },
            job.Marks with { Tape = job.Marks.Tape with { Resolution = k * job.Marks.Tape.Resolution } });
    }
}
