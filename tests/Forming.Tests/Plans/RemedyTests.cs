using CsCheck;
using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans;
using Forming.Plans.Checks;
using Forming.Plans.Drafts;
using Forming.Plans.Remedies;
using Forming.Results;
using Forming.Springback;
using Check = Forming.Checks.Check;

namespace Forming.Tests.Plans;

/// <summary>What is offered for a check that did not pass was planned, and cures it.</summary>
public class RemedyTests
{
    [Fact]
    public void A_remedy_passes_its_check_and_spoils_no_other() =>
        RandomJobs.Plain.ForAll(
            job =>
            {
                var asked = new FormJob(job.Panel, job.Form, job.Brake, job.Marks);
                var checks = FormPlan.Compute(asked).Checks;
                var before = Verdicts(checks);
                foreach (var check in checks.Where(check => check.Remedy?.Changes.Count > 0))
                {
                    var after = Verdicts(PlanChecks.Of(PlanDraft.Of(asked.With(check.Remedy!.Changes), null, null, default)));
                    Assert.Equal(Verdict.Pass, after.GetValueOrDefault(check.Id));
                    Assert.All(after, now => Assert.True(now.Value <= before.GetValueOrDefault(now.Key), $"{check.Id}: {now.Key}"));
                }
            },
            iter: 40);

    // A trial takes over the curve and the folds of the job that it changes, where the change leaves them alone.
    [Fact]
    [Trait("Category", "Long")]
    public void A_plan_that_takes_over_what_stays_the_same_is_the_plan_from_scratch() =>
        Gen.Select(RandomJobs.Any, Gen.Int[0, 12], Gen.Double[0.5, 2]).ForAll(
            (job, kind, share) =>
            {
                var asked = new FormJob(job.Panel, job.Form, job.Brake, job.Marks);
                JobChange change = kind switch
                {
                    0 => new(JobField.FormLeadIn, share * asked.Form.LeadInMm),
                    1 => new(JobField.FormLeadOut, share * asked.Form.LeadOutMm),
                    2 => new(JobField.FormWidth, share * asked.Form.WidthMm),
                    3 => new(JobField.PanelLeadIn, share * asked.Panel.LeadInMm),
                    4 => new(JobField.PanelLeadOut, share * asked.Panel.LeadOutMm),
                    5 => new(JobField.PanelLever, share * 100),
                    6 => new(JobField.PanelThickness, share * asked.Panel.Sheet.ThicknessMm),
                    7 => new(JobField.FormThickness, share * asked.Form.Sheet.ThicknessMm),
                    8 => new(JobField.FormFoldRadius, share * asked.Form.FoldRadiusMm),
                    9 => new(JobField.SteppingFolds, Math.Round(10 * share)),
                    10 => new(JobField.BrakeMinFacet, share * asked.Brake.MinFacetMm),
                    11 => new(JobField.MarksResolution, share * asked.Marks.Tape.Resolution),
                    _ => new(JobField.ClampGap, share * 25),
                };
                var changed = asked.With(change);
                if (Planned(asked, null) is { } draft)
                    Assert.Equal(Told(Planned(changed, null)), Told(Planned(changed, draft)));
            },
            iter: 60);

    private static PlanDraft? Planned(FormJob job, PlanDraft? known)
    {
        try
        {
            return PlanDraft.Of(job, known, null, default);
        }
        catch (NoSolutionException)
        {
            return null;
        }
    }

    private static string[]? Told(PlanDraft? draft) => draft is null ? null :
    [
        .. draft.Stations.Select(station => station.ToString()),
        draft.Pull.ToString(),
        draft.PanelBlank.ToString(),
        .. PlanChecks.Of(draft).Select(check => FormattableString.Invariant($"{check.Id} {check.Verdict} {check.Value:R} {check.Limit:R}")),
    ];

    [Fact]
    public void A_search_for_remedies_is_bounded_and_counts_the_same_every_time()
    {
        var job = new FormJob(
            Workshop.Panel(Workshop.Progressive(300, 900, 160, ProgressiveLaw.Clothoid)) with { WidthMm = 3000, Finish = Finish.Gloss, LeverMm = 400 },
            Workshop.Form(new() { Folds = 40, MaxFacetMm = 5 }) with { FoldRadiusMm = 0.5, LeadInMm = 3, LeadOutMm = 3, WidthMm = 3000 },
            Workshop.Brake with { MinFacetMm = 30, StopResolution = Angle.FromDegrees(4), Capacity = new(1, 300) },
            Workshop.Marks);
        var draft = PlanDraft.Of(job, null, null, default);
        var searches = Enumerable.Range(0, 2).Select(_ => new RemedySearch(job, draft, PlanChecks.Of(draft), default)).ToArray();
        var remedies = searches.Select(search => search.ChecksWithRemedies(_ => true).Select(check => check.Remedy?.Text.ToString()).ToArray()).ToArray();
        Assert.InRange(searches[0].Trials, 1, RemedySearch.MostTrials);
        Assert.Equal(searches[0].Trials, searches[1].Trials);
        Assert.Equal(remedies[0], remedies[1]);
    }

    [Fact]
    public void A_job_that_is_ready_costs_no_trial()
    {
        var job = new FormJob(
            Workshop.Panel(Workshop.Arc(60, 60)) with { Springback = new SolvedOnWrap(), Scatter = new(0, 0, 0, Angle.Zero, 0) },
            Workshop.Form() with { Backing = FormBacking.Ribs },
            Workshop.Brake, Workshop.Marks);
        var draft = PlanDraft.Of(job, null, null, default);
        var search = new RemedySearch(job, draft, PlanChecks.Of(draft), default);
        Assert.All(search.ChecksWithRemedies(_ => true), check => Assert.Equal(check.Verdict == Verdict.Pass, check.Remedy is null));
        Assert.True(search.ChecksWithRemedies(_ => true).All(check => check.Verdict == Verdict.Pass) == (search.Trials == 0));
    }

    [Fact]
    public void A_value_is_rounded_to_the_safe_side_in_the_callers_unit()
    {
        Assert.Equal(0.143, At(RemedyValues.Up(0.08, 0.1421, 10, RemedyValues.Fine(CallerUnits.Inch))));
        Assert.Equal(0.104, At(RemedyValues.Down(0.12, 0.10459, 0.01, RemedyValues.Fine(CallerUnits.Inch))));
        Assert.Equal(12.5, At(RemedyValues.Up(10, 12.01, 100, RemedyValues.Tape(CallerUnits.Mm))));
        Assert.Equal(5.625, At(RemedyValues.Down(7, 5.7, 1, RemedyValues.Tape(CallerUnits.Inch))));

        static double At(RemedyValues values) => values.Numbers[values.Start];
    }

    [Fact]
    public void A_sheet_by_gauge_is_changed_by_gauge()
    {
        var job = new FormJob(
            Workshop.Panel(Workshop.Arc(90, 90)),
            Workshop.Form() with { Sheet = new(Workshop.Of("steel-cr-cs"), 2.66) },
            Workshop.Brake with { Capacity = new(2, 300) },
            Workshop.Marks)
        {
            Units = CallerUnits.Inch,
            FormGaugeSystem = Workshop.Of("steel-cr-cs").GaugeSystem,
        };
        var changes = FormPlan.Compute(job).Checks.Single(check => check.Id == "capacity").Remedy!.Changes;
        Assert.Equal(JobField.FormGauge, changes[0].Field);
        Assert.True(job.With(changes).Form.Sheet.ThicknessMm < 2.66);
    }

    private static Dictionary<string, Verdict> Verdicts(IReadOnlyList<Check> checks) =>
        checks.GroupBy(check => check.Id, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Max(check => check.Verdict), StringComparer.Ordinal);
}
