using Forming.Checks;
using Forming.Curves;
using Forming.Jobs;
using Forming.Plans;
using Forming.Plans.Checks;
using Forming.Plans.Drafts;
using Forming.Plans.Remedies;
using Forming.Springback;

namespace Forming.Tests.Plans;

/// <summary>What cures a pull that cannot be followed: changes that were solved on the simulated pull.</summary>
public sealed class PullRemedyTests
{
    private static readonly string[] OfThePull = ["facet-width", "lever", "wrap-order"];

    [Theory]
    [InlineData("al-5052-h32", 1.6)]
    [InlineData("ss-304", 0.8)]
    [InlineData("al-6061-t6", 1.6)]
    public void A_panel_that_springs_back_too_far_for_its_sweep_is_made_thicker_or_bent_in_two(string sheet, double thicknessMm)
    {
        var job = Job(Workshop.Arc(300, 90), sheet, thicknessMm);
        var plan = FormPlan.Compute(job);
        foreach (var id in OfThePull)
        {
            Assert.Equal(Verdict.Warn, Workshop.CheckOf(plan, id).Verdict);
            IsCured(job, plan, id, [JobField.PanelThickness, JobField.CurveSweep]);
        }
    }

    [Fact]
    [Trait("Category", "Long")]
    public void A_panel_that_is_tight_at_the_clamp_is_turned_round()
    {
        var job = Job(Workshop.Progressive(100, 300, 90, ProgressiveLaw.Logarithmic), "al-5052-h32", 1.6);
        var changes = IsCured(job, FormPlan.Compute(job), "wrap-order", [JobField.CurveStartRadius]);
        Assert.Equal(new(300, 100, Angle.FromDegrees(90), ProgressiveLaw.Logarithmic), (ProgressiveCurve)job.With(changes).Panel.Curve);
        Assert.Equal((job.Panel.LeadOutMm, job.Panel.LeadInMm), (job.With(changes).Panel.LeadInMm, job.With(changes).Panel.LeadOutMm));
    }

    [Fact]
    [Trait("Category", "Long")]
    public void A_lever_that_is_too_long_is_left_to_the_plan()
    {
        var job = Job(Workshop.Progressive(80, 105, 120, ProgressiveLaw.Involute), "steel-dc04", 0.5);
        job = job with { Panel = job.Panel with { LeverMm = 180, LeadOutMm = 200 } };
        IsCured(job, FormPlan.Compute(job), "wrap-order", [JobField.PanelLever]);
    }

    [Fact]
    [Trait("Category", "Long")]
    public void Two_bends_with_a_long_flat_between_them_want_two_forms()
    {
        var curve = new SegmentsCurve([Workshop.Arc(75, 40), new FlatCurve(90), Workshop.Arc(75, 40)]);
        var job = Job(curve, "al-3003-h14", 1.6);
        var draft = PlanDraft.Of(job with { Form = job.Form with { Stepping = new() { Folds = 8 } } }, null, null, default);
        var order = PlanChecks.Of(draft).Single(check => check.Id == "wrap-order");
        Assert.Equal(Verdict.Warn, order.Verdict);
        Assert.Contains("on a separate form", RemedyCandidates.None(draft, order).ToString(), StringComparison.Ordinal);
    }

    private static IReadOnlyList<JobChange> IsCured(FormJob job, FormPlan plan, string id, JobField[] first)
    {
        var remedy = Workshop.CheckOf(plan, id).Remedy!;
        Assert.NotEmpty(remedy.Changes);
        Assert.Contains(remedy.Changes[0].Field, first);
        var again = FormPlan.Compute(job.With(remedy.Changes), _ => false);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(again, id).Verdict);
        Assert.Null(again.Panel.WhyNotSolved);
        Assert.All(again.Checks, now => Assert.True(
            now.Verdict <= (plan.Checks.FirstOrDefault(before => before.Id == now.Id)?.Verdict ?? Verdict.Pass), now.Id));
        return remedy.Changes;
    }

    private static FormJob Job(PanelCurve curve, string sheet, double thicknessMm) => new(
        Workshop.Panel(curve) with
        {
            Sheet = new(Workshop.Of(sheet), thicknessMm),
            Springback = new SolvedOnWrap(),
            PullBy = new(1, 20000),
        },
        Workshop.Form() with { Backing = FormBacking.Ribs },
        Workshop.Brake,
        Workshop.Marks);
}
