using CsCheck;
using Forming.Corrections;
using Forming.Inspection;
using Forming.Prediction;

namespace Forming.Tests.Corrections;

/// <summary>Facts of the trade about corrections, over random jobs.</summary>
public class CorrectionReportTests
{
    private static readonly Gen<(double Radius, double Sweep, int Folds, double Stronger, bool ClosesOnly)> Jobs = Gen.Select(
        Gen.Double[70, 160], Gen.Double[45, 100], Gen.Int[5, 9], Gen.Double[0.87, 1.2], Gen.Bool);

    [Fact]
    public void A_correction_leaves_no_panel_further_off_and_keeps_the_folds_where_they_are() => Jobs.ForAll(
        job =>
        {
            var (pull, report) = Corrected(job);
            var tolerance = pull.Panel.Tolerance;
            Assert.True(ShareOf(report.After) <= ShareOf(report.AsIs) + 1e-9, $"{ShareOf(report.AsIs)} to {ShareOf(report.After)}");
            Assert.Equal(report.Form.Meets, ShareOf(report.After) <= 1);
            Assert.True(!report.Form.Meets || report.Form.Folds >= report.Form.LowerBound);
            Assert.Equal(report.Form.Folds, report.Form.Closed + report.Form.Opened);
            Assert.True(!job.ClosesOnly || report.Form.Opened == 0);
            Assert.All(report.Form.Steps, steps => Assert.InRange(Math.Abs(steps), 0, 4));

            double ShareOf(PanelPrediction panel) => Math.Max(
                Math.Abs(panel.Shape!.SweepMiss.Radians) / tolerance.Sweep.Radians, panel.Shape.RadiusMiss!.Value / tolerance.RadiusShare);
        },
        iter: 20);

    [Fact]
    public void Only_a_panel_that_is_too_open_is_pulled_again() => Jobs.ForAll(
        job =>
        {
            var (_, report) = Corrected(job);
            var isTooOpen = report.AsIs.Shape!.SweepMiss.Radians < 0;
            Assert.True(report.Second.Panel is null || isTooOpen);
            if (report.Second.Verdict == SecondPullVerdict.Saves)
                Assert.True(report.Second.Panel!.Shape!.Sweep > report.AsIs.Shape.Sweep);
        },
        iter: 10);

    [Fact]
    public void A_good_panel_needs_no_correction()
    {
        var pull = CameOff.Form("al-3003-h14", 1.6, 75, 90, 8);
        var report = CorrectionReport.Of(CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, 1), null)));
        Assert.True(report.Form is { Meets: true, Folds: 0, LowerBound: 0, IsFewest: true });
        Assert.Equal(SecondPullVerdict.NotNeeded, report.Second.Verdict);
        Assert.Equal(["PullPanel", "MeasurePanel"], report.Next.Select(step => step.Kind.ToString()));
    }

    [Fact]
    public void The_same_readings_give_the_same_answer()
    {
        var pull = CameOff.Form("ss-304", 1.2, 90, 60, 6);
        var job = CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, 1.1), null));
        var (one, other) = (CorrectionReport.Of(job), CorrectionReport.Of(job));
        Assert.Equal(one.Yield.EffectiveMpa, other.Yield.EffectiveMpa);
        Assert.Equal(one.Form.Steps, other.Form.Steps);
        Assert.Equal(one.Pulls, other.Pulls);
        Assert.InRange(one.Pulls, 1, 200);
    }

    private static (PredictionJob Pull, CorrectionReport Report) Corrected((double Radius, double Sweep, int Folds, double Stronger, bool ClosesOnly) job)
    {
        var pull = CameOff.Form("al-3003-h14", 1.6, job.Radius, job.Sweep, job.Folds);
        var direction = job.ClosesOnly ? CorrectionDirection.CloseOnly : CorrectionDirection.Both;
        return (pull, CorrectionReport.Of(CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, job.Stronger), null), direction: direction)));
    }
}
