using Forming.Corrections;
using Forming.Inspection;
using Forming.Jobs;
using Forming.Prediction;

namespace Forming.Tests.Corrections;

/// <summary>The fewest folds to correct, against every choice of folds and steps pulled one by one.</summary>
public class FewestFoldsTests
{
    public static TheoryData<string, double, double, double, int, double, CorrectionDirection> Jobs => new()
    {
        { "al-3003-h14", 1.6, 75, 60, 5, 1.15, CorrectionDirection.Both },
        { "al-3003-h14", 1.6, 75, 60, 6, 0.85, CorrectionDirection.Both },
        { "steel-cr-cs", 1.0, 400, 40, 7, 1.06, CorrectionDirection.Both },
        { "steel-cr-cs", 0.9, 150, 60, 7, 1.12, CorrectionDirection.CloseOnly },
        { "ss-304", 1.2, 90, 60, 6, 1.2, CorrectionDirection.CloseOnly },
        { "al-5052-h32", 2.0, 120, 60, 7, 0.93, CorrectionDirection.Both },
        { "al-5052-h32", 2.0, 120, 60, 7, 1.1, CorrectionDirection.CloseOnly },
    };

    [Theory]
    [MemberData(nameof(Jobs))]
    [Trait("Category", "Long")]
    public void No_fewer_folds_would_do(string material, double thickness, double radius, double sweep, int folds, double stronger, CorrectionDirection direction)
    {
        var pull = CameOff.Form(material, thickness, radius, sweep, folds);
        var job = CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, stronger), null), step: 0.75, mostSteps: 2, direction: direction);
        var report = CorrectionReport.Of(job);
        var most = report.Form.Meets && report.Form.IsFewest ? report.Form.Folds : Math.Min(3, report.Form.LowerBound - 1);
        Assert.True(most > 0, $"nothing to correct: {report.AsIs.Shape!.SweepMiss.Degrees}°");
        var learnt = pull with { Panel = pull.Panel with { LeverMm = pull.LeverMm, StrengthFactor = report.Yield.Factor } };
        var fewest = Enumerable.Range(0, most + 1).FirstOrDefault(count => Some(learnt, job.Rules, count), -1);
        Assert.Equal(report.Form is { Meets: true, IsFewest: true } ? report.Form.Folds : -1, fewest);
    }

    [Theory]
    [InlineData("al-3003-h14", 1.6, 75, 90, 8)]
    [InlineData("steel-cr-cs", 0.9, 150, 90, 11)]
    [InlineData("ss-304", 1.2, 90, 60, 5)]
    [InlineData("steel-cr-cs", 1.0, 400, 40, 8)]
    [InlineData("al-5052-h32", 1.6, 95, 85, 7)]
    public void Folds_changed_together_do_what_they_do_alone_within_what_the_search_allows(string material, double thickness, double radius, double sweep, int folds)
    {
        var pull = CameOff.Form(material, thickness, radius, sweep, folds);
        pull = pull with { Panel = pull.Panel with { LeverMm = pull.LeverMm } };
        var rules = new FoldRules(Angle.FromDegrees(0.5), CorrectionDirection.Both, 4);
        var trial = new CorrectionTrial(pull, rules, new(PullWork.Most), default);
        var responses = FoldResponses.Of(trial, trial.Of(new int[folds])!.Off, pull.Form, rules);
        var random = new Random(3);
        for (var draw = 0; draw < 150; draw++)
        {
            var steps = new int[folds];
            foreach (var fold in Enumerable.Range(0, folds).OrderBy(_ => random.Next()).Take(1 + (draw % FewestFolds.MostFolds)))
                steps[fold] = (draw % 3 == 0 || random.Next(2) == 0 ? 1 : -1) * random.Next(1, 5);
            if (trial.Of(steps) is not { } tried)
                continue;
            var off = tried.Off - responses.Sum(steps);
            double Sum(Func<PanelOff, double> of) => Enumerable.Range(0, folds).Sum(i => Math.Abs(of(responses.At(i, steps[i]))));
            Assert.InRange(Math.Abs(off.Sweep), 0, (FewestFolds.SweepTogether * Sum(own => own.Sweep)) + FewestFolds.SweepBeside);
            Assert.InRange(Math.Abs(off.LnRadius), 0, (FewestFolds.RadiusTogether * Sum(own => own.LnRadius)) + FewestFolds.RadiusBeside);
        }
    }

    [Fact]
    public void Nothing_is_called_proven_where_most_of_the_bend_springs_back()
    {
        var pull = CameOff.Form("steel-cr-cs", 1.0, 600, 30, 9);
        var report = CorrectionReport.Of(CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, 1.08), null)));
        Assert.True(report.Form is { Meets: true, Folds: > 0, IsFewest: false, LowerBound: 1 });
        Assert.Contains(report.Notes, note => note.Id == "not-proven-fewest");
    }

    [Fact]
    public void Of_equally_few_folds_none_is_opened_where_closing_does()
    {
        var pull = CameOff.Form("al-3003-h14", 1.6, 75, 90, 8);
        var report = CorrectionReport.Of(CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, 1.12), null)));
        Assert.True(report.Form.Meets);
        Assert.Equal(0, report.Form.Opened);
        Assert.Equal(report.Form.Folds, report.Form.Closed);
    }

    [Fact]
    public void A_panel_too_tight_cannot_be_corrected_by_closing_folds()
    {
        var pull = CameOff.Form("al-3003-h14", 1.6, 75, 90, 8);
        var read = CameOff.Read(CameOff.Truth(pull, 0.88), null);
        var closing = CorrectionReport.Of(CameOff.Job(pull, read, direction: CorrectionDirection.CloseOnly));
        Assert.False(closing.Form.Meets);
        Assert.Equal(0, closing.Form.Folds);
        var both = CorrectionReport.Of(CameOff.Job(pull, read));
        Assert.True(both.Form.Meets);
        Assert.Equal(both.Form.Folds, both.Form.Opened);
        Assert.Equal(SecondPullVerdict.TooTight, both.Second.Verdict);
    }

    private static bool Some(PredictionJob pull, FoldRules rules, int count)
    {
        var steps = new int[pull.Form.Folds];
        return From(0, count);

        bool From(int fold, int left)
        {
            if (left == 0)
                return Meets();
            for (; fold + left <= steps.Length; fold++)
            {
                for (var k = rules.LeastSteps; k <= rules.MostSteps; k++)
                {
                    steps[fold] = k;
                    if (k != 0 && From(fold + 1, left - 1))
                        return true;
                }

                steps[fold] = 0;
            }

            return false;
        }

        bool Meets()
        {
            var shape = PanelPrediction.Of(pull with { Form = rules.Corrected(pull.Form, steps) }).Shape;
            var tolerance = FinishedTolerance.Default;
            return shape is not null
                && Math.Abs(shape.SweepMiss.Radians) <= tolerance.Sweep.Radians
                && Math.Abs((shape.RadiusMm!.Value / shape.WantedRadiusMm!.Value) - 1) <= tolerance.RadiusShare;
        }
    }
}
